import type { Lab } from '@buildweek/model';
import type { HandLoad } from '@buildweek/results';
import type { WeekRange } from './expected-demand.ts';
import { type FewestCount, fewestCounts } from './fewest-counts.ts';
import { expectedWork, loadsOf } from './hand-calculation.ts';
import { handLeadTimes, type PartEstimate } from './lead-time/hand-lead-times.ts';

/** All that a page of arithmetic says about a lab. */
export interface HandAnswer {
  readonly loads: readonly HandLoad[];
  readonly leadTimes: readonly PartEstimate[];
  readonly fewest: readonly FewestCount[];
}

/**
 * Loads, rough lead times and the fewest machines, stations and people that can carry the demand, without playing
 * anything. Pure, and cheap: some 8 ms for the demo (seven part types
 * with shapes, eight groups of equipment), below 1 ms for a lab of one part and one machine group, measured on a core of a
 * server processor with Node 20.
 *
 * @param range the weeks over which demand and working hours are averaged
 * @throws Error when a name in the lab does not resolve
 */
export function handAnswer(lab: Lab, range: WeekRange): HandAnswer {
  const expected = expectedWork(lab, range);
  const loads = loadsOf(lab, range, expected);
  return {
    loads,
    leadTimes: handLeadTimes(lab, range),
    fewest: fewestCounts(lab, range, loads, expected.people),
  };
}
