import { checkShare, checkValues } from './checks.ts';
import { variance } from './summary.ts';
import { regionHalfWidth, twoSidedRegion } from './triangular-region.ts';

/**
 * Plays replications `from` (counted from 0) up to, without, `to` of one system.
 * @returns a value for each replication; null when somebody stopped it
 */
export type ObserveMeasure = (system: number, from: number, to: number) => Promise<readonly number[] | null>;

/** Among what is chosen, and how sure the choice has to be. */
export interface KimNelsonSettings {
  readonly systems: number;
  /** Share of uses in which the choice may be wrong, below (systems − 1) / 2. */
  readonly alpha: number;
  /** A difference of means too small to matter, above 0. */
  readonly tolerance: number;
  /** Replications that give the variances, and before which nobody is eliminated; at least 2. */
  readonly firstStage: number;
  /** Replications that are asked for at a time, after the first stage. */
  readonly batch: number;
  /** Replications of one system after which the choice ends undecided. */
  readonly most: number;
}

/** A system leaves, because another one is seen to be better. */
export interface Elimination {
  readonly system: number;
  readonly by: number;
  /** After how many replications. */
  readonly replication: number;
}

/** What was chosen. */
export interface KimNelsonChoice {
  /** Null while more than one system is left. */
  readonly chosen: number | null;
  /** Those that nobody eliminated, in their order. */
  readonly left: readonly number[];
  /** In the order in which they happened. */
  readonly eliminations: readonly Elimination[];
  /** For each system: replications played, and their mean (NaN for none). */
  readonly played: readonly { readonly replications: number; readonly mean: number }[];
  /** Replications played, of all systems. */
  readonly replications: number;
  readonly isStopped: boolean;
}

/**
 * Chooses the system with the smallest mean, on common random numbers if `observe` plays the same replications for
 * all. After each replication a system leaves whose sum is above that of another one by more than the region of their
 * differences; where the regions of all that are left have ended, the smallest sum is chosen (the first of equal ones).
 *
 * The promise, for normal observations: when the best mean is smaller than every other by the tolerance, it is chosen
 * with a chance of at least 1 − alpha, whatever the correlation between systems. The constants, with c = 1, are
 * eta = ½ [(2 alpha / (k − 1))^(−2 / (n0 − 1)) − 1] and h² = 2 eta (n0 − 1).
 * Source: S.-H. Kim and B. L. Nelson, "A fully sequential procedure for indifference-zone selection in simulation", ACM
 * Transactions on Modeling and Computer Simulation 11 (2001), 251–273.
 * @throws RangeError for settings out of range, or observations of another number or that are not finite
 */
export async function kimNelson(
  settings: KimNelsonSettings,
  observe: ObserveMeasure,
): Promise<KimNelsonChoice> {
  check(settings);
  const { systems, firstStage, batch, most } = settings;
  const screening = new Screening(settings);
  const values: number[][] = Array.from({ length: systems }, () => []);
  let done = 0;
  let isStopped = false;
  while (done < most && screening.left.length > 1 && !isStopped) {
    const to = done === 0 ? firstStage : Math.min(done + batch, most);
    for (const system of screening.left) {
      const more = await observe(system, done, to);
      if (more === null) {
        isStopped = true;
        break;
      }
      take(values[system] as number[], more, to - done);
    }
    if (isStopped) break;
    if (done === 0) screening.start(values);
    for (let count = Math.max(done + 1, firstStage); count <= to && screening.left.length > 1; count++) {
      screening.screen(values, count);
    }
    done = to;
  }
  const [first = null] = screening.left;
  return {
    chosen: screening.left.length === 1 ? first : null,
    left: [...screening.left],
    eliminations: screening.eliminations,
    played: values.map((own) => ({
      replications: own.length,
      mean: own.reduce((sum, value) => sum + value, 0) / own.length,
    })),
    replications: values.reduce((sum, own) => sum + own.length, 0),
    isStopped,
  };
}

function check({ systems, alpha, tolerance, batch, most, firstStage }: KimNelsonSettings): void {
  checkShare('share of wrong answers', alpha);
  if (!(tolerance > 0 && Number.isFinite(tolerance))) {
    throw new RangeError(`The tolerance must be above 0 and finite, not ${tolerance}`);
  }
  for (const [name, value] of [
    ['number of systems', systems],
    ['batch', batch],
  ] as const) {
    if (!(Number.isInteger(value) && value >= 1)) {
      throw new RangeError(`The ${name} must be a whole number of at least 1, not ${value}`);
    }
  }
  if (!(Number.isInteger(most) && most >= firstStage)) {
    throw new RangeError(`At most ${most} replications do not complete a first stage of ${firstStage}`);
  }
}

function take(values: number[], more: readonly number[], wanted: number): void {
  if (more.length !== wanted) {
    throw new RangeError(`${wanted} replications were asked for, not ${more.length}`);
  }
  checkValues(more, 1);
  values.push(...more);
}

/** Who is left, and why the others are not. */
class Screening {
  readonly eliminations: Elimination[] = [];
  left: number[];
  private readonly settings: KimNelsonSettings;
  private readonly hSquared: number;
  /** Variances of the differences in the first stage, by pair. */
  private readonly variances: Float64Array;
  private readonly sums: Float64Array;

  constructor(settings: KimNelsonSettings) {
    const { systems, alpha, firstStage } = settings;
    this.settings = settings;
    this.left = Array.from({ length: systems }, (_, system) => system);
    this.hSquared = systems === 1 ? 0 : twoSidedRegion(firstStage, alpha / (systems - 1)).hSquared;
    this.variances = new Float64Array(systems * systems);
    this.sums = new Float64Array(systems);
  }

  /** Takes the variances from the first stage. */
  start(values: readonly number[][]): void {
    const { systems, firstStage } = this.settings;
    values.forEach((one, first) => {
      values.slice(first + 1).forEach((other, offset) => {
        const second = first + 1 + offset;
        const pair = variance(one.map((value, index) => value - (other[index] as number)));
        this.variances[first * systems + second] = pair;
        this.variances[second * systems + first] = pair;
      });
      // The last one of the first stage is added when it is screened.
      this.sums[first] = one.slice(0, firstStage - 1).reduce((sum, value) => sum + value, 0);
    });
  }

  /** Looks at the sums after so many replications; called for each number from the first stage on. */
  screen(values: readonly number[][], replication: number): void {
    for (const system of this.left) {
      this.sums[system] = this.sum(system) + (values[system]?.[replication - 1] as number);
    }
    const [first = 0, ...rest] = this.left;
    const best = rest.reduce((own, other) => (this.sum(other) < this.sum(own) ? other : own), first);
    const hasEnded = this.left.every((one) =>
      this.left.every((other) => one === other || this.halfWidth(one, other, replication) === 0),
    );
    const leaving = this.left.flatMap((system): Elimination[] => {
      if (system === best) return [];
      const by = hasEnded ? best : this.betterThan(system, replication);
      return by === null ? [] : [{ system, by, replication }];
    });
    this.eliminations.push(...leaving);
    const gone = new Set(leaving.map(({ system }) => system));
    this.left = this.left.filter((system) => !gone.has(system));
  }

  /** Who is better by more than the region, by most; null when nobody is. */
  private betterThan(system: number, replication: number): number | null {
    let found: number | null = null;
    let most = 0;
    for (const other of this.left) {
      if (other === system) continue;
      const beyond = this.sum(system) - this.sum(other) - this.halfWidth(system, other, replication);
      if (beyond > most) {
        most = beyond;
        found = other;
      }
    }
    return found;
  }

  private halfWidth(one: number, other: number, replication: number): number {
    const { systems, tolerance } = this.settings;
    const pair = this.variances[one * systems + other] as number;
    return regionHalfWidth(this.hSquared, pair, tolerance, replication);
  }

  private sum(system: number): number {
    return this.sums[system] as number;
  }
}
