import { type KolmogorovTest, kolmogorovTest } from './kolmogorov.ts';

/** Arrivals of a stretch over which their rate is taken as constant. */
export interface ArrivalBlock {
  readonly from: number;
  readonly to: number;
  /** Between `from` and `to`. */
  readonly times: readonly number[];
}

/**
 * Tests arrivals for being Poisson with a rate that is constant within each block: given how many came in a block, they
 * then lie anywhere in it alike. The distances between them are put in order first, after J. Durbin and P. A. W. Lewis,
 * which finds clustering that the plain test overlooks. That counts of weeks vary more than they should is for the
 * dispersion test to find: this one looks within the blocks.
 * Source: S.-H. Kim and W. Whitt, "Choosing arrival process models for service systems: tests of a nonhomogeneous Poisson
 * process", Naval Research Logistics 61 (2014), 66–90, sections 3 and 6.
 *
 * @throws RangeError when fewer than two blocks' worth of arrivals are there to test
 */
export function poissonArrivalsTest(
  blocks: readonly ArrivalBlock[],
): KolmogorovTest & { readonly arrivals: number } {
  const values = blocks.flatMap(orderedDistances);
  if (values.length < 2) throw new RangeError('There are too few arrivals to test.');
  return { ...kolmogorovTest(values, (value) => value), arrivals: values.length };
}

/**
 * Times that were written down to a unit, such as the hour, spread over it again; unspread they would fall together and
 * look like clusters.
 * Source: as above, section 4.
 *
 * @param draw gives numbers between 0 and 1, from a stream of its own
 */
export function unrounded(times: readonly number[], unit: number, draw: () => number): number[] {
  return times.map((time) => time + unit * draw()).sort((a, b) => a - b);
}

/** The largest unit of which nearly all times are multiples. @param units from large to small, the last is always right */
export function roundingUnit(times: readonly number[], units: readonly number[]): number {
  const found = units.find((unit) => times.filter((time) => time % unit === 0).length >= 0.95 * times.length);
  return found ?? units.at(-1) ?? 1;
}

/**
 * The ordered uniform positions that come of the spacings of a block, put in order of their size.
 * Source: J. Durbin, "Some methods of constructing exact tests", Biometrika 48 (1961), 41–55.
 */
function orderedDistances({ from, to, times }: ArrivalBlock): number[] {
  const n = times.length;
  const width = to - from;
  if (n === 0 || !(width > 0)) return [];
  const ascending = [...times].sort((a, b) => a - b);
  const spacings = [...ascending, to].map((time, index) => (time - (ascending[index - 1] ?? from)) / width);
  spacings.sort((a, b) => a - b);
  const positions: number[] = [];
  let sum = 0;
  let before = 0;
  for (let index = 0; index < n; index++) {
    const spacing = spacings[index] ?? 0;
    // As many spacings are at least as large as this one.
    sum += (n + 1 - index) * (spacing - before);
    before = spacing;
    positions.push(Math.min(1, Math.max(0, sum)));
  }
  return positions;
}
