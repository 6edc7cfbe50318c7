import { checkShare } from './checks.ts';
import { oneSidedRegion, regionHalfWidth, twoSidedRegion } from './triangular-region.ts';

/** Whether a constraint, or a plan, is known to be met. */
export type FeasibilityState = 'undecided' | 'met' | 'missed';

/** How sure a test has to be, and when it may say so. */
export interface FeasibilitySettings {
  /** For each constraint: the distance from the target within which either answer is right, above 0. */
  readonly tolerances: readonly number[];
  /**
   * For each constraint: the variance is taken to be at least so large, for measures of which a first stage may see no
   * variation though there is some, such as 0 or 1 for each replication. Default 0.
   */
  readonly leastVariances?: readonly number[];
  /** Chance of calling a constraint met whose mean is one tolerance or more below 0. */
  readonly falseMet: number;
  /** Chance of calling a constraint missed whose mean is one tolerance or more above 0. */
  readonly falseMissed: number;
  /** Replications that give the variance for either answer, and before which it is not given; each at least 2. */
  readonly firstStage: { readonly met: number; readonly missed: number };
}

/** One constraint: sums so far, and the variances of the first stages once these are complete. */
interface Constraint {
  readonly tolerance: number;
  readonly leastVariance: number;
  state: FeasibilityState;
  sum: number;
  /** Welford's mean and sum of squares, as in `RunningMeans`. */
  centre: number;
  squares: number;
  varianceMet: number;
  varianceMissed: number;
}

/**
 * Tests one plan against constraints on means, E[Y] ≥ 0 for each constraint, replication after replication. Y is the
 * measure less its target (or the target less the measure). A plan is missed as soon as one constraint is, and met when
 * all are.
 *
 * The sum of each Y is watched until it leaves a triangular region; at its end the sign decides. For normal values a
 * constraint that is one tolerance or more above 0 is called missed with a chance of at most `falseMissed`, one that is
 * as much below 0 is called met with at most `falseMet`, and whatever lies between may be called either. Means over
 * many jobs are nearly normal; a measure that never varied in the first stage is decided at its end, which is right for
 * one that cannot vary and may be wrong for one that varies seldom.
 *
 * With equal levels and first stages this is the procedure of Andradóttir and Kim with c = 1 for one system; else each
 * side has constants of its own. Sources and derivation: `triangular-region.ts`.
 */
export class FeasibilityTest {
  private readonly settings: FeasibilitySettings;
  private readonly constraints: readonly Constraint[];
  private readonly hSquaredMet: number;
  private readonly hSquaredMissed: number;
  private count = 0;
  private decided: number | null = null;
  private firstMissed: number | null = null;

  /** @throws RangeError for no constraint, or for tolerances, error levels or first stages out of range */
  constructor(settings: FeasibilitySettings) {
    const { tolerances, falseMet, falseMissed, firstStage } = settings;
    if (tolerances.length === 0) throw new RangeError('There must be at least one constraint');
    for (const tolerance of tolerances) {
      if (!(tolerance > 0 && Number.isFinite(tolerance))) {
        throw new RangeError(`A tolerance must be above 0 and finite, not ${tolerance}`);
      }
    }
    checkShare('chance of a false "met"', falseMet);
    checkShare('chance of a false "missed"', falseMissed);
    const isSymmetric = falseMet === falseMissed && firstStage.met === firstStage.missed && falseMet < 0.5;
    const region = isSymmetric ? twoSidedRegion : oneSidedRegion;
    this.settings = settings;
    this.hSquaredMet = region(firstStage.met, falseMet).hSquared;
    this.hSquaredMissed = region(firstStage.missed, falseMissed).hSquared;
    this.constraints = tolerances.map((tolerance, index) => ({
      tolerance,
      leastVariance: settings.leastVariances?.[index] ?? 0,
      state: 'undecided',
      sum: 0,
      centre: 0,
      squares: 0,
      varianceMet: Number.NaN,
      varianceMissed: Number.NaN,
    }));
  }

  get replications(): number {
    return this.count;
  }

  /** Of the whole plan. What was decided stays decided. */
  get state(): FeasibilityState {
    if (this.firstMissed !== null) return 'missed';
    return this.constraints.every(({ state }) => state === 'met') ? 'met' : 'undecided';
  }

  /** After how many replications the plan was decided; null when it is not. */
  get decidedAfter(): number | null {
    return this.decided;
  }

  /** The constraint that made the plan missed; null when none did. */
  get failed(): number | null {
    return this.firstMissed;
  }

  /** @throws RangeError when there is no such constraint */
  stateOf(constraint: number): FeasibilityState {
    return this.constraint(constraint).state;
  }

  /** Mean of Y so far; 0 before the first replication. Errors as above. */
  mean(constraint: number): number {
    return this.constraint(constraint).centre;
  }

  /**
   * Takes in one replication. More may be added after the plan is decided; they sharpen the means and bounds.
   * @param values Y of each constraint
   * @throws RangeError for another number of values, or one that is not finite
   */
  add(values: ArrayLike<number>): void {
    if (values.length !== this.constraints.length) {
      throw new RangeError(`${this.constraints.length} values are needed, not ${values.length}`);
    }
    for (let index = 0; index < values.length; index++) {
      if (!Number.isFinite(values[index])) {
        throw new RangeError(`Value ${index} is not finite: ${values[index]}`);
      }
    }
    this.count++;
    this.constraints.forEach((constraint, index) => {
      this.take(constraint, values[index] as number);
      if (constraint.state === 'missed') this.firstMissed ??= index;
    });
    if (this.decided === null && this.state !== 'undecided') this.decided = this.count;
  }

  /**
   * A bound below which the true mean does not lie, with the given confidence, at whatever replication one looks or
   * stops: it is where the mean would have to be for the sum to touch the line of a one-sided region of that level. It
   * comes to half a tolerance of the mean and no nearer. Null before the first stage of "met" is complete.
   * @throws RangeError for no such constraint, or unless 0 < level < 1
   */
  atLeast(constraint: number, level: number): number | null {
    const { tolerance, varianceMet } = this.constraint(constraint);
    const margin = this.margin(this.settings.firstStage.met, varianceMet, tolerance, level);
    return margin === null ? null : this.mean(constraint) - margin;
  }

  /** A bound above which the true mean does not lie, from the first stage of "missed"; otherwise as above. */
  atMost(constraint: number, level: number): number | null {
    const { tolerance, varianceMissed } = this.constraint(constraint);
    const margin = this.margin(this.settings.firstStage.missed, varianceMissed, tolerance, level);
    return margin === null ? null : this.mean(constraint) + margin;
  }

  private take(constraint: Constraint, value: number): void {
    const { met, missed } = this.settings.firstStage;
    const { centre, tolerance } = constraint;
    constraint.sum += value;
    constraint.centre = centre + (value - centre) / this.count;
    constraint.squares += (value - centre) * (value - constraint.centre);
    const { squares, leastVariance } = constraint;
    if (this.count === met) constraint.varianceMet = Math.max(leastVariance, squares / (met - 1));
    if (this.count === missed) constraint.varianceMissed = Math.max(leastVariance, squares / (missed - 1));
    if (constraint.state !== 'undecided') return;
    const { sum, varianceMet, varianceMissed } = constraint;
    if (this.count >= met && sum >= regionHalfWidth(this.hSquaredMet, varianceMet, tolerance, this.count)) {
      constraint.state = 'met';
    } else if (
      this.count >= missed &&
      sum < 0 &&
      sum <= -regionHalfWidth(this.hSquaredMissed, varianceMissed, tolerance, this.count)
    ) {
      constraint.state = 'missed';
    }
  }

  /** (a + (tolerance / 2) r) / r, where a is the start of the line for the level. */
  private margin(firstStage: number, variance: number, tolerance: number, level: number): number | null {
    checkShare('confidence level', level);
    if (this.count < firstStage) return null;
    const { hSquared } = oneSidedRegion(firstStage, 1 - level);
    return regionHalfWidth(hSquared, variance, tolerance, 0) / this.count + tolerance / 2;
  }

  private constraint(index: number): Constraint {
    const found = this.constraints[index];
    if (found === undefined) throw new RangeError(`There is no constraint ${index}`);
    return found;
  }
}
