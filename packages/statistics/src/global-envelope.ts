import { checkLevel } from './checks.ts';

/**
 * Curves that belong together, such as one value for each week: one row for each history, all of one length. Row 0 is
 * the history that is tested.
 */
export type CurveFamily = readonly ArrayLike<number>[];

/** The band of one family. */
export interface FamilyBand {
  /** Smallest and largest values of the histories that are not among the most extreme, for each place. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Whether the tested history leaves the band. */
  readonly isLeft: boolean;
}

export interface GlobalEnvelope {
  /** Share of all histories, the tested one among them, that are at least as extreme as it. */
  readonly pValue: number;
  /** One for each family. */
  readonly bands: readonly FamilyBand[];
}

/**
 * Monte Carlo rank test over whole bands: is one history out of line with others that were drawn from a model, in any
 * of several families of curves? When it was drawn from the model too, all histories are exchangeable, so that
 * `pValue` is at most `falseAlarmRate` in at most this share of all uses, whatever the curves depend on and however
 * many there are. Histories that are equally extreme count against an alarm.
 *
 * Each value of a family is ranked among those of all histories at the same place, from the nearer end (values that are
 * equal share the mean of their ranks); a history is as extreme as its smallest ranks, compared one after the other
 * (extreme rank length). The ranks of the families are combined in the same way, so that each of them weighs the same,
 * and a history that is extreme in several is more extreme than in one.
 *
 * Sources, from memory: M. Myllymäki, T. Mrkvička, P. Grabarnik, H. Seijo, U. Hahn, "Global envelope tests for spatial
 * processes", J. R. Stat. Soc. B 79 (2017), sections on the rank envelope test and the extreme rank length; the
 * combination in two steps: M. Myllymäki, T. Mrkvička, "GET: Global envelopes in R", section on combined tests.
 *
 * @param families at least one; each with the same histories in the same order, at least 20, and at least one place
 * @param falseAlarmRate between 0 and 1; its product with the number of histories should be a whole number
 * @throws RangeError when families do not fit together, or a value is no number
 */
export function globalEnvelope(families: readonly CurveFamily[], falseAlarmRate: number): GlobalEnvelope {
  checkLevel(falseAlarmRate);
  const histories = families[0]?.length ?? 0;
  if (histories < 20) throw new RangeError(`At least 20 histories are needed, not ${histories}.`);
  const ranksOfFamilies = families.map((family) => {
    if (family.length !== histories) throw new RangeError('All families need the same histories.');
    return depthRanks(ranksFromNearerEnd(family));
  });
  const combined = Array.from({ length: histories }, (_, history) =>
    Float64Array.from(ranksOfFamilies, (ranks) => valueAt(ranks, history)),
  );
  const shares = sharesAtLeastAsExtreme(combined);
  const kept = [...shares.keys()].filter((history) => valueAt(shares, history) > falseAlarmRate);
  return { pValue: valueAt(shares, 0), bands: families.map((family) => bandOf(family, kept)) };
}

/** For each history the ranks of its values at each place, 1 for the smallest and for the largest. */
export function ranksFromNearerEnd(family: CurveFamily): Float64Array[] {
  const places = placesOf(family);
  if (places === 0) throw new RangeError('A family needs at least one place.');
  if (family.some((curve) => curve.length !== places)) throw new RangeError('Curves differ in length.');
  const ranks = family.map(() => new Float64Array(places));
  for (let place = 0; place < places; place++) {
    const values = family.map((curve) => valueAt(curve, place));
    if (values.some(Number.isNaN)) throw new RangeError(`There is no number at place ${place}.`);
    const fromBelow = meanRanks(values, (a, b) => a - b);
    ranks.forEach((own, history) => {
      const rank = valueAt(fromBelow, history);
      own[place] = Math.min(rank, family.length + 1 - rank);
    });
  }
  return ranks;
}

/** The rank of each history by its smallest ranks, from the most extreme; equal ones share the mean of their ranks. */
function depthRanks(ranks: readonly Float64Array[]): Float64Array {
  return meanRanks(
    ranks.map((own) => own.slice().sort()),
    compareInOrder,
  );
}

/** For each history the share of all that are at least as extreme. */
function sharesAtLeastAsExtreme(ranks: readonly Float64Array[]): Float64Array {
  const sorted = ranks.map((own) => own.slice().sort());
  return Float64Array.from(
    sorted,
    (own) => sorted.filter((other) => compareInOrder(other, own) <= 0).length / sorted.length,
  );
}

function compareInOrder(one: Float64Array, other: Float64Array): number {
  for (let place = 0; place < one.length; place++) {
    const difference = valueAt(one, place) - valueAt(other, place);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Ranks from 1; values that compare equal share the mean of their ranks. */
function meanRanks<Value>(values: readonly Value[], compare: (a: Value, b: Value) => number): Float64Array {
  const sorted = values.map((value, position) => ({ value, position }));
  sorted.sort((a, b) => compare(a.value, b.value));
  const ranks = new Float64Array(values.length);
  for (let first = 0; first < sorted.length; ) {
    const { value } = sorted[first] as { value: Value };
    let end = first + 1;
    for (let next = sorted[end]; next !== undefined && compare(next.value, value) === 0; ) {
      next = sorted[++end];
    }
    for (const { position } of sorted.slice(first, end)) ranks[position] = (first + end + 1) / 2;
    first = end;
  }
  return ranks;
}

function bandOf(family: CurveFamily, kept: readonly number[]): FamilyBand {
  const places = placesOf(family);
  const low = new Float64Array(places).fill(Number.POSITIVE_INFINITY);
  const high = new Float64Array(places).fill(Number.NEGATIVE_INFINITY);
  for (const history of kept) {
    const curve = family[history] ?? [];
    for (let place = 0; place < places; place++) {
      low[place] = Math.min(valueAt(low, place), valueAt(curve, place));
      high[place] = Math.max(valueAt(high, place), valueAt(curve, place));
    }
  }
  const [tested = []] = family;
  const isLeft = Array.from(tested).some(
    (value, place) => value < valueAt(low, place) || value > valueAt(high, place),
  );
  return { low, high, isLeft };
}

function placesOf(family: CurveFamily): number {
  return family[0]?.length ?? 0;
}

function valueAt(values: ArrayLike<number>, position: number): number {
  return values[position] as number;
}
