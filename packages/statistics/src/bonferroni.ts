import { studentQuantile } from '@buildweek/numbers';
import { checkLevel } from './checks.ts';
import { type PairedDifference, pairedDifference } from './comparison.ts';

/**
 * The level that each of several statements needs so that all of them hold together with the level asked for, whatever
 * their dependence: 1 − (1 − level) / statements.
 * Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, third edition, section 9.7 (the inequality of
 * Bonferroni) and 10.3.
 * @throws RangeError unless 0 < level < 1, and statements is a whole number of at least 1
 */
export function individualLevel(level: number, statements: number): number {
  checkLevel(level);
  if (!(Number.isInteger(statements) && statements >= 1)) {
    throw new RangeError(`The number of statements must be a whole number of at least 1, not ${statements}`);
  }
  return 1 - (1 - level) / statements;
}

/**
 * By how many standard errors each of several two-sided intervals reaches to either side, so that all of them hold
 * together with the level asked for.
 * @throws RangeError as above, or unless the degrees of freedom are positive
 */
export function simultaneousCriticalValue(
  level: number,
  statements: number,
  degreesOfFreedom: number,
): number {
  return studentQuantile((1 + individualLevel(level, statements)) / 2, degreesOfFreedom);
}

/**
 * How several systems differ from one, on common random numbers: other − base for each, with intervals that hold
 * together with the level asked for.
 * @param base one value for each replication
 * @param others the same replications of each other system
 * @param statements how many intervals are looked at together; more than there are systems here when several measures
 *   are compared
 * @returns in the order of the others; `level` of each is its own, which is higher than that of all together
 * @throws RangeError as for one difference, or when there are fewer statements than others
 */
export function pairedDifferences(
  base: ArrayLike<number>,
  others: readonly ArrayLike<number>[],
  level: number,
  statements: number = others.length,
): PairedDifference[] {
  if (others.length === 0) return [];
  if (statements < others.length) {
    throw new RangeError(`${others.length} differences are more than ${statements} statements`);
  }
  const own = individualLevel(level, statements);
  return others.map((other) => pairedDifference(other, base, own));
}
