/** @throws RangeError unless 0 < level < 1 */
export function checkLevel(level: number): void {
  checkShare('confidence level', level);
}

/** @throws RangeError unless 0 < share < 1 */
export function checkShare(name: string, share: number): void {
  if (!(share > 0 && share < 1))
    throw new RangeError(`The ${name} must lie strictly between 0 and 1, not ${share}`);
}

/** @throws RangeError when there are fewer values than needed, or one of them is not finite */
export function checkValues(values: ArrayLike<number>, fewest: number): void {
  if (values.length < fewest) {
    throw new RangeError(`At least ${fewest} values are needed, not ${values.length}`);
  }
  for (let index = 0; index < values.length; index++) {
    if (!Number.isFinite(values[index]))
      throw new RangeError(`Value ${index} is not finite: ${values[index]}`);
  }
}

/** @throws RangeError unless both have the same length */
export function checkPairs(first: ArrayLike<unknown>, second: ArrayLike<unknown>): void {
  if (first.length !== second.length) {
    throw new RangeError(`Pairs are needed, not ${first.length} values beside ${second.length}`);
  }
}
