import { meanWait } from './many-servers.ts';
import type { SingleServerQueue } from './single-server.ts';

/** A queue in front of like servers, told by means and squared coefficients of variation. */
export interface ParallelServerQueue extends SingleServerQueue {
  /** At least 1; Sakasegawa's formula also takes a broken number, as of people on average there. */
  readonly servers: number;
}

/**
 * Mean wait: that of exponential times, by how variable the true ones are.
 * Source: A. O. Allen, "Probability, Statistics, and Queueing Theory with Computer Science Applications" (2nd ed. 1990),
 * section 5.2 (from memory).
 * @throws RangeError when the servers cannot keep up or their number is broken
 */
export function allenCunneenWait(queue: ParallelServerQueue): number {
  const { utilization, meanServiceHours, servers, arrivalVariability, serviceVariability } = queue;
  const arrivalRate = (utilization * servers) / meanServiceHours;
  return (
    ((arrivalVariability + serviceVariability) / 2) * meanWait({ arrivalRate, meanServiceHours, servers })
  );
}

/**
 * Mean wait, as variability times utilization times time (the VUT equation for parallel machines):
 * (ca² + ce²) / 2 · u^(√(2 (m + 1)) − 1) / (m (1 − u)) · te.
 * Sources: H. Sakasegawa, "An approximation formula Lq ≈ α ρ^β / (1 − ρ)", Annals of the Institute of Statistical
 * Mathematics 29 (1977), 67–75; W. J. Hopp and M. L. Spearman, "Factory Physics" (3rd ed. 2008), section 8.6.4
 * (both from memory).
 * @returns Infinity at a utilization of 1 and above
 */
export function sakasegawaWait(queue: ParallelServerQueue): number {
  const { utilization, meanServiceHours, servers, arrivalVariability, serviceVariability } = queue;
  if (utilization >= 1) return Number.POSITIVE_INFINITY;
  const crowding = utilization ** (Math.sqrt(2 * (servers + 1)) - 1) / (servers * (1 - utilization));
  return ((arrivalVariability + serviceVariability) / 2) * crowding * meanServiceHours;
}
