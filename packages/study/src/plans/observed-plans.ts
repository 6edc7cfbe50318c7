import type { Lab } from '@buildweek/model';
import type { ReplicationExecutor, StopSignal } from '../executor.ts';
import { inOrder } from '../in-order.ts';
import type { ReplicationTemplate } from '../replications.ts';
import { startEarlier } from '../start-earlier.ts';
import type { Plan } from './plan.ts';
import type { MeasuresOfPlan, ReplicationMeasure } from './replication-measure.ts';

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
  readonly onReplication?: (plan: Plan) => void;
}

/**
 * Plays plans on common random numbers and remembers what each replication gave. Replication r of every plan has the
 * same demand and the same luck as far as that exists in both.
 */
export class ObservedPlans {
  private readonly options: ObservationOptions;
  private readonly known = new Map<string, ObservedPlan>();

  constructor(options: ObservationOptions) {
    this.options = options;
  }

  /** Replications used so far, over all plans. */
  get replications(): number {
    let total = 0;
    for (const plan of this.known.values()) total += plan.observations.length;
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
      onReplication?.(plan);
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

  private of(plan: Plan): ObservedPlan {
    const known = this.known.get(plan.name);
    if (known !== undefined) return known;
    const playable = startEarlier(plan.lab, this.options.template.ignoredWeeks);
    const observed = { measures: this.options.measures(playable, plan), playable, observations: [] };
    this.known.set(plan.name, observed);
    return observed;
  }
}

interface ObservedPlan {
  readonly measures: readonly ReplicationMeasure[];
  /** The lab with the ignored weeks before its stated start. */
  readonly playable: Lab;
  readonly observations: Observation[];
}
