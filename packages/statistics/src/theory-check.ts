import { inverseNormal, normalCumulative, studentQuantile } from '@buildweek/numbers';

/**
 * Chance that at least one of all assertions of a run fails though everything is right: about 1 in 100, what
 * z = 4.05 gives for 200 of them.
 */
const FALSE_ALARM_RATE = 400 * normalCumulative(-4.05);

/** An estimate held against a value that is known from theory. */
export interface TheoryCheck {
  readonly estimate: number;
  /** From independent replications; above 0. */
  readonly standardError: number;
  /** Of the standard error: replications less 1. Infinity where it is known exactly. */
  readonly degreesOfFreedom: number;
  readonly truth: number;
  /** All assertions of the same run, this one included. */
  readonly assertions: number;
}

export interface TheoryVerdict {
  /** (estimate − truth) / standard error. */
  readonly score: number;
  /** The score may lie between −limit and limit. */
  readonly limit: number;
  readonly agrees: boolean;
}

/**
 * Whether an estimate agrees with theory, at a stated rate of false alarms. With few replications Student's t
 * takes the place of the normal score: at 29 degrees of freedom and 200 assertions the limit is 4.75, not 4.05.
 * The rate is shared out evenly among the assertions (Bonferroni).
 * @throws RangeError when the standard error is not positive and finite, there is no assertion, or a number is NaN
 */
export function theoryVerdict(check: TheoryCheck): TheoryVerdict {
  const { estimate, standardError, degreesOfFreedom, truth, assertions } = check;
  if (!(standardError > 0 && standardError < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`The standard error must be positive and finite, not ${standardError}`);
  }
  if (!(assertions >= 1)) throw new RangeError(`There must be at least 1 assertion, not ${assertions}`);
  const score = (estimate - truth) / standardError;
  if (Number.isNaN(score)) throw new RangeError('The estimate or the truth is not a number');
  const tail = FALSE_ALARM_RATE / (2 * assertions);
  const limit =
    degreesOfFreedom === Number.POSITIVE_INFINITY
      ? -inverseNormal(tail)
      : -studentQuantile(tail, degreesOfFreedom);
  return { score, limit, agrees: Math.abs(score) <= limit };
}
