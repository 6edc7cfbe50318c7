import { sakasegawaWait } from '../formulas/parallel-servers.ts';
import { type Moments, mixtureOf, variabilityOf } from '../formulas/process-time.ts';

/** What comes to a resource from one stage of one part type, in an average week. */
export interface Visits {
  readonly perWeek: number;
  /** Hours for which it holds one machine, station or person. */
  readonly time: Moments;
  /** How uneven it comes; see `StreamFlow.arrivalVariability`. */
  readonly arrivalVariability: number;
}

/** How many machines, stations or people there are, and for how many hours of the week. */
export interface Capacity {
  /** May be broken, where people come and go. */
  readonly servers: number;
  /** Hours of the week in which these are there. */
  readonly hoursPerWeek: number;
}

export interface Queue {
  readonly utilization: number;
  /** Mean hours, of the hours in which the resource is there; Infinity when it cannot keep up. */
  readonly waitHours: number;
}

/**
 * The queue before a resource, by the formula of Sakasegawa: all that comes counts as one flow with the mean and the
 * squared coefficient of variation of the mixture. Its arrivals are as uneven as the flows are on average, by their
 * weight: exact for independent flows in the long run (W. Whitt, "Approximating a point process by a renewal process",
 * Operations Research 30 (1982), 125–147, the asymptotic method; from memory).
 */
export function queueOf(visits: readonly Visits[], { servers, hoursPerWeek }: Capacity): Queue {
  const perWeek = visits.reduce((sum, one) => sum + one.perWeek, 0);
  if (perWeek === 0) return { utilization: 0, waitHours: 0 };
  const time = mixtureOf(visits.map((one) => ({ weight: one.perWeek, time: one.time })));
  if (time.mean === 0) return { utilization: 0, waitHours: 0 };
  const available = servers * hoursPerWeek;
  if (available === 0) return { utilization: Number.POSITIVE_INFINITY, waitHours: Number.POSITIVE_INFINITY };
  const utilization = (perWeek * time.mean) / available;
  const uneven = visits.reduce((sum, one) => sum + one.perWeek * one.arrivalVariability, 0) / perWeek;
  const waitHours = sakasegawaWait({
    utilization,
    // Somebody who is there for part of the time takes the longer for everything.
    meanServiceHours: time.mean / Math.min(1, servers),
    servers: Math.max(1, servers),
    arrivalVariability: uneven,
    serviceVariability: variabilityOf(time),
  });
  return { utilization, waitHours };
}
