import { studentQuantile } from '@buildweek/numbers';
import { fitNonnegative, type NonnegativeFit } from './nonnegative-fit.ts';

/** A parameter whose standard error is more than this share of it is not known from the builds alone. */
const VAGUE = 0.5;

/** Relative errors of builds that differ by less than this, squared and summed, are the same. */
const SAME_DEVIANCE = 1e-9;

/** What one parameter of the start model adds to every build, in hours. */
export interface StartColumn {
  readonly values: readonly number[];
  /** False when it is zero in the start model; the values are those of a coefficient of 1 then. */
  readonly hasStart: boolean;
  /** Whether the parameter is an amount per time, which cannot come out endless. */
  readonly isRate: boolean;
}

/** Positions of the parameters that get one factor in common. */
export type Group = readonly number[];

/** A factor on the start model for each group. */
export interface GroupedFit {
  readonly groups: readonly Group[];
  readonly fit: NonnegativeFit;
}

type Pair = readonly [number, number];

interface Joined {
  readonly pair: Pair;
  readonly groups: readonly Group[];
  readonly fit: NonnegativeFit | null;
}

/**
 * Fits a factor for every parameter, and joins those that cannot be told apart until all that is left can be. With no
 * more builds than parameters there is one factor from the beginning. Parameters without any measure are in no group.
 * @returns null when not even one factor for all can be fitted
 */
export function fitInGroups(columns: readonly StartColumn[], measured: readonly number[]): GroupedFit | null {
  const told = columns.flatMap(({ values }, index) => (values.some((value) => value > 0) ? [index] : []));
  let groups: readonly Group[] = measured.length > told.length ? told.map((index) => [index]) : [told];
  for (;;) {
    const fit = fitNonnegative(sumsOf(columns, groups), measured);
    if (groups.length === 1) return fit === null ? null : { groups, fit };
    const candidates = pairsOf(groups)
      .map((pair): Joined => {
        const next = join(groups, pair);
        return { pair, groups: next, fit: fitNonnegative(sumsOf(columns, next), measured) };
      })
      .filter((joined) => fit === null || isToBeJoined(fit, joined, groups, columns));
    if (candidates.length === 0) return fit === null ? null : { groups, fit };
    groups = bestOf(candidates, sumsOf(columns, groups)).groups;
  }
}

/** All pairs of positions. */
export function pairsOf(entries: readonly unknown[]): Pair[] {
  return entries.flatMap((_, first) =>
    entries.flatMap((_, second) => (second > first ? [[first, second] as const] : [])),
  );
}

/** The hours of each group; in a ratio, what is zero in the start model stays zero. */
function sumsOf(columns: readonly StartColumn[], groups: readonly Group[]): number[][] {
  return groups.map((group) => {
    const counted = group.filter((index) => group.length === 1 || columns[index].hasStart);
    return columns[0].values.map((_, build) =>
      counted.reduce((sum, index) => sum + columns[index].values[build], 0),
    );
  });
}

function join(groups: readonly Group[], [first, second]: Pair): readonly Group[] {
  const together = [...groups[first], ...groups[second]].sort((one, other) => one - other);
  return groups.flatMap((group, index) => (index === second ? [] : index === first ? [together] : [group]));
}

/** A pair is joined when one of it is vague and the builds do not contradict the ratio (an F test at 5 %). */
function isToBeJoined(
  fit: NonnegativeFit,
  joined: Joined,
  groups: readonly Group[],
  columns: readonly StartColumn[],
): boolean {
  const isEndless = joined.pair.some(
    (position) => fit.coefficients[position] === 0 && groups[position].some((index) => columns[index].isRate),
  );
  if (isEndless) return true;
  const isVague = joined.pair.some((position) => {
    const error = fit.errors[position];
    return error === null || error > VAGUE * fit.coefficients[position];
  });
  if (!isVague || joined.fit === null) return false;
  const { degreesOfFreedom, deviance } = fit;
  const limit = studentQuantile(0.975, degreesOfFreedom) ** 2;
  return joined.fit.deviance - deviance <= (limit * deviance) / degreesOfFreedom;
}

/** Of the joins that fit best, the one of the columns with the smallest angle between them. */
function bestOf(candidates: readonly Joined[], sums: readonly (readonly number[])[]): Joined {
  const devianceOf = ({ fit }: Joined): number => fit?.deviance ?? Number.POSITIVE_INFINITY;
  const least = Math.min(...candidates.map(devianceOf));
  const product = (first: readonly number[], second: readonly number[]): number =>
    first.reduce((sum, value, index) => sum + value * second[index], 0);
  const cosine = ({ pair: [first, second] }: Joined): number =>
    product(sums[first], sums[second]) /
    Math.sqrt(product(sums[first], sums[first]) * product(sums[second], sums[second]));
  return candidates
    .filter((joined) => !(devianceOf(joined) > least + SAME_DEVIANCE))
    .reduce((best, joined) => (cosine(joined) > cosine(best) ? joined : best));
}
