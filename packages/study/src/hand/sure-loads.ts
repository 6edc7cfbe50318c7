import type { Lab } from '@buildweek/model';
import type { HandLoad } from '@buildweek/results';
import type { WeekRange } from './expected-demand.ts';
import { handCalculation } from './hand-calculation.ts';

const MAY_GO = ' Jobs that may be sent out are counted as made here.';

/** Loads by hand, with all jobs that are not always sent out, and with those alone that never are. */
export interface HandLoads {
  /** To be shown; the note says where jobs that may be sent out are in it. */
  readonly all: HandLoad[];
  /** What is sure to be asked of the lab: a queue with a load of 1 and above here grows without end. */
  readonly sure: HandLoad[];
}

/**
 * A rule that sends jobs out keeps a queue from growing without end, whatever the load; only what is never sent out
 * can make it grow.
 *
 * @param range the weeks over which demand and working hours are averaged
 */
export function handLoads(lab: Lab, range: WeekRange): HandLoads {
  const all = handCalculation(lab, range);
  const staying = lab.demand.filter(({ sentOut }) => sentOut === null || sentOut.always);
  if (staying.length === lab.demand.length) return { all, sure: all };
  const sure = handCalculation({ ...lab, demand: staying }, range);
  return {
    all: all.map((load, index) =>
      sure[index]?.demandHoursPerWeek === load.demandHoursPerWeek
        ? load
        : { ...load, note: load.note + MAY_GO },
    ),
    sure,
  };
}
