import { studentQuantile } from '@buildweek/numbers';
import type { Estimate } from '@buildweek/results';
import { type TheoryVerdict, theoryVerdict } from '@buildweek/statistics';

/**
 * Whether an estimate of a study agrees with a published value. Its standard error is what its interval says: the
 * distance to the limit on the side of the published value, over Student's t of its level.
 *
 * @param assertions all values that are held against theory in the same run of the tests
 */
export function verdictOf(estimate: Estimate, truth: number, assertions: number): TheoryVerdict {
  const { value, replications } = estimate;
  return theoryVerdict({
    estimate: value,
    standardError: standardErrorOf(estimate, truth),
    degreesOfFreedom: replications - 1,
    truth,
    assertions,
  });
}

/** Standard error towards a value, in the unit of the estimate. */
export function standardErrorOf(
  { value, low, high, level, replications }: Estimate,
  towards: number,
): number {
  const distance = towards > value ? high - value : value - low;
  return distance / studentQuantile((1 + level) / 2, replications - 1);
}
