import type { DemandStream, Lab } from '@buildweek/model';
import { scaleEachDemand } from '../doubts/changes/scale-demand.ts';

/**
 * The lab with the demand of a later month, which then stays: what the month would be like if it went on for ever.
 *
 * @param growthPerMonth compound growth of all demand; null: of each as the scenario states it
 * @param month from the start of the plan
 */
export function labInMonth(lab: Lab, growthPerMonth: number | null, month: number): Lab {
  const grown = scaleEachDemand(lab, (stream) => (1 + growthOf(stream, growthPerMonth)) ** month);
  return {
    ...grown,
    demand: grown.demand.map((stream) =>
      stream.arrivals.kind === 'poisson'
        ? { ...stream, arrivals: { ...stream.arrivals, growthPerMonth: 0 } }
        : stream,
    ),
  };
}

function growthOf({ arrivals }: DemandStream, growthPerMonth: number | null): number {
  if (growthPerMonth !== null) return growthPerMonth;
  return arrivals.kind === 'poisson' ? arrivals.growthPerMonth : 0;
}

/** Jobs a week in a month against those in month 0; 1 where nothing that grows is known. */
export function demandInMonth(lab: Lab, growthPerMonth: number | null, month: number): number {
  let before = 0;
  let after = 0;
  for (const stream of lab.demand) {
    if (stream.arrivals.kind !== 'poisson') continue;
    before += stream.arrivals.perWeek;
    after += stream.arrivals.perWeek * (1 + growthOf(stream, growthPerMonth)) ** month;
  }
  if (before > 0) return after / before;
  return growthPerMonth === null ? 1 : (1 + growthPerMonth) ** month;
}
