import type { Lab } from '@buildweek/model';
import type { ReplicationExecutor, StopSignal } from '../executor.ts';
import { inOrder } from '../in-order.ts';
import type { ReplicationTemplate } from '../replications.ts';
import { startEarlier } from '../start-earlier.ts';
import type { Plan } from './plan.ts';
import type { MeasuresOfPlan, ReplicationMeasure } from './replication-measure.ts';

/** A lab that is another one in each replication. */
export interface Worlds {
  /** Differs from that of every plan. */
  readonly name: string;
  /** The lab of one replication; the same whenever it is asked for. */
  labOf(replication: number): Lab;
}

/** Replications of worlds that are under way together: enough for the cores of most computers. */
const WORLDS_AT_ONCE = 8;

/** What one replication of a plan gave: numerator and denominator of each measure, one after the other. */
export type Observation = Float64Array;

/**
 * Keeps observations, so that a search that was stopped goes on where it was. Whatever is kept is used instead of
 * playing: the same search on the same scenario then takes the same way to the same end.
 */
export interface ObservationJournal {
  read(plan: string, replication: number): Observation | null;
  write(plan: string, replication: number, observation: Observation): void;
}

/** A journal that keeps nothing. */
const NO_JOURNAL: ObservationJournal = { read: () => null, write: () => {} };

export interface ObservationOptions {
  readonly measures: MeasuresOfPlan;
  readonly template: ReplicationTemplate;
  readonly executor: ReplicationExecutor;
  readonly stop?: StopSignal | null;
  readonly journal?: ObservationJournal;
  /** Called for each replication that is used for the first time, played or read. */
  readonly onReplication?: () => void;
}

/**
 * Plays plans on common random numbers and remembers what each replication gave. Replication r of every plan has the
 * same demand and the same luck as far as that exists in both.
 */
export class ObservedPlans {
  private readonly options: ObservationOptions;
  private readonly known = new Map<string, ObservedPlan>();
  private readonly worlds = new Map<string, Observation[]>();

  constructor(options: ObservationOptions) {
    this.options = options;
  }

  /** Replications used so far, over all plans. */
  get replications(): number {
    let total = 0;
    for (const plan of this.known.values()) total += plan.observations.length;
    for (const observations of this.worlds.values()) total += observations.length;
    return total;
  }

  measuresOf(plan: Plan): readonly ReplicationMeasure[] {
    return this.of(plan).measures;
  }

  /**
   * The first so many replications of a plan, which are played as far as they are not known.
   *
   * @returns null when somebody stopped before all were there; what was finished is remembered
   */
  async observe(plan: Plan, count: number): Promise<readonly Observation[] | null> {
    const { observations, measures, playable } = this.of(plan);
    const { template, executor, stop = null, journal = NO_JOURNAL, onReplication } = this.options;
    const take = (observation: Observation): void => {
      observations.push(observation);
      onReplication?.();
    };
    while (observations.length < count) {
      const kept = journal.read(plan.name, observations.length);
      if (kept === null) break;
      take(kept);
    }
    const first = observations.length;
    if (first < count) {
      const wanted = Array.from({ length: count - first }, (_, index) => ({
        ...template,
        replication: first + index,
      }));
      for await (const history of inOrder(executor.run(playable, wanted, stop), first)) {
        const observation = Float64Array.from(measures.flatMap((measure) => measure.of(history)));
        journal.write(plan.name, observations.length, observation);
        take(observation);
      }
    }
    return observations.length < count ? null : observations.slice(0, count);
  }

  /**
   * The first so many replications of worlds, each of which is a lab of its own and is played once.
   *
   * @returns as {@link observe}
   */
  async observeWorlds(worlds: Worlds, count: number): Promise<readonly Observation[] | null> {
    const { journal = NO_JOURNAL, onReplication } = this.options;
    const { name } = worlds;
    const observations = this.worlds.get(name) ?? [];
    this.worlds.set(name, observations);
    const running: Promise<Observation | null>[] = [];
    let begun = observations.length;
    while (observations.length < count) {
      // The labs of worlds that are over are forgotten, so that memory stays flat.
      while (begun < count && running.length < WORLDS_AT_ONCE) {
        const replication = begun++;
        const kept = journal.read(name, replication);
        const played =
          kept === null
            ? this.playOnce({ name, lab: worlds.labOf(replication) }, replication)
            : Promise.resolve(kept);
        // Whoever waits for the first hears of its error; the others must not end the program before.
        played.catch(() => {});
        running.push(played);
      }
      const observation = (await running.shift()) ?? null;
      if (observation === null) return null;
      if (journal.read(name, observations.length) === null) {
        journal.write(name, observations.length, observation);
      }
      observations.push(observation);
      onReplication?.();
    }
    return observations.slice(0, count);
  }

  private async playOnce(world: Plan, replication: number): Promise<Observation | null> {
    const { template, executor, stop = null, measures } = this.options;
    const playable = startEarlier(world.lab, template.ignoredWeeks);
    for await (const history of executor.run(playable, [{ ...template, replication }], stop)) {
      return Float64Array.from(measures(playable, world).flatMap((measure) => measure.of(history)));
    }
    return null;
  }

  /** @throws RangeError when its measures are others: values are found by place, and would be taken for one another */
  private of(plan: Plan): ObservedPlan {
    const known = this.known.get(plan.name);
    if (known !== undefined) return known;
    const playable = startEarlier(plan.lab, this.options.template.ignoredWeeks);
    const measures = this.options.measures(playable, plan);
    const [other] = this.known.values();
    if (other !== undefined && !haveSameNames(measures, other.measures)) {
      throw new RangeError(`“${plan.name}” has other measures than the plans before it.`);
    }
    const observed = { measures, playable, observations: [] };
    this.known.set(plan.name, observed);
    return observed;
  }
}

function haveSameNames(some: readonly ReplicationMeasure[], others: readonly ReplicationMeasure[]): boolean {
  return some.length === others.length && some.every(({ name }, index) => name === others[index]?.name);
}

interface ObservedPlan {
  readonly measures: readonly ReplicationMeasure[];
  /** The lab with the ignored weeks before its stated start. */
  readonly playable: Lab;
  readonly observations: Observation[];
}
