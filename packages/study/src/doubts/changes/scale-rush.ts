import type { Lab } from '@buildweek/model';

/**
 * So many times as large a share of rush jobs, at most all. Dated jobs that say whether they are rush keep that.
 *
 * @param of name of a demand stream; null: all
 */
export function scaleRush(lab: Lab, of: string | null, factor: number): Lab {
  return {
    ...lab,
    demand: lab.demand.map((stream) =>
      of === null || of === stream.name
        ? { ...stream, rushShare: Math.min(1, stream.rushShare * factor) }
        : stream,
    ),
  };
}
