import { type CurveFamily, ranksFromNearerEnd } from '@buildweek/statistics';

/** A measure week by week, of what happened and of each replication; and in which weeks it has a value. */
export interface WeekCurves {
  readonly curves: CurveFamily;
  readonly weeks: readonly number[];
}

/** How many weeks are as usual. */
export interface WeeksWithin {
  /** For what happened and each replication. */
  readonly counts: readonly number[];
  /** Share of all weeks of all replications that are. */
  readonly usual: number;
  /** For each measure, smallest and largest usual value in each of its weeks. */
  readonly bands: readonly { readonly low: Float64Array; readonly high: Float64Array }[];
}

/** About this share of the weeks of the model itself is called unusual. */
const UNUSUAL = 0.1;

/**
 * Counts the weeks in which every measure is as usual: none of them is among the most extreme of all histories in that
 * week. What happened is ranked among the replications as each of them is among the others, so that its count is one
 * of many equal ones when the model is right.
 */
export function weeksWithin(measures: readonly WeekCurves[]): WeeksWithin {
  const ranks = measures.map(({ curves }) => ranksFromNearerEnd(curves));
  const histories = measures[0]?.curves.length ?? 0;
  const weeks = Math.max(...measures.map((measure) => Math.max(...measure.weeks))) + 1;
  const nearest = Array.from({ length: histories }, (_, history) => {
    const own = new Float64Array(weeks).fill(Number.POSITIVE_INFINITY);
    measures.forEach((measure, index) => {
      measure.weeks.forEach((week, place) => {
        const rank = ranks[index]?.[history]?.[place] ?? Number.POSITIVE_INFINITY;
        own[week] = Math.min(own[week] ?? rank, rank);
      });
    });
    return own;
  });
  const pooled = Float64Array.from(nearest.flatMap((own) => [...own])).sort();
  const edge = pooled[Math.floor(UNUSUAL * pooled.length)] ?? 1;
  const counts = nearest.map((own) => own.filter((rank) => rank >= edge).length);
  return {
    counts,
    usual: counts.reduce((sum, count) => sum + count, 0) / pooled.length,
    bands: measures.map(({ curves }, index) => usualBand(curves, ranks[index] ?? [], edge)),
  };
}

function usualBand(
  curves: CurveFamily,
  ranks: readonly Float64Array[],
  edge: number,
): { low: Float64Array; high: Float64Array } {
  const places = curves[0]?.length ?? 0;
  const low = new Float64Array(places).fill(Number.POSITIVE_INFINITY);
  const high = new Float64Array(places).fill(Number.NEGATIVE_INFINITY);
  curves.forEach((curve, history) => {
    for (let place = 0; place < places; place++) {
      if ((ranks[history]?.[place] ?? 0) < edge) continue;
      const value = curve[place] ?? Number.NaN;
      low[place] = Math.min(low[place] ?? value, value);
      high[place] = Math.max(high[place] ?? value, value);
    }
  });
  return { low, high };
}
