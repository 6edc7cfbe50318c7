import { chiSquareUpper } from '@buildweek/numbers';

/** How far counts lie from what was expected of them. */
export interface ChiSquareFit {
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number;
}

/**
 * Goodness of fit of counts in classes. Classes that are too thin are for the caller to pool.
 * Source: K. Pearson, "On the criterion …", Philosophical Magazine 50 (1900), 157–175.
 *
 * @param fitted number of parameters that were estimated from the counts
 * @throws RangeError unless there are as many expected counts, all positive, and classes enough
 */
export function chiSquareFit(
  observed: readonly number[],
  expected: readonly number[],
  fitted: number,
): ChiSquareFit {
  const degreesOfFreedom = observed.length - 1 - fitted;
  if (observed.length !== expected.length || degreesOfFreedom < 1) {
    throw new RangeError(`${observed.length} classes are too few, or not as many as are expected.`);
  }
  let chiSquare = 0;
  for (const [index, count] of observed.entries()) {
    const wanted = expected[index] ?? 0;
    if (!(wanted > 0)) throw new RangeError(`An expected count must be positive, not ${wanted}`);
    chiSquare += (count - wanted) ** 2 / wanted;
  }
  return { chiSquare, degreesOfFreedom, pValue: chiSquareUpper(chiSquare, degreesOfFreedom) };
}
