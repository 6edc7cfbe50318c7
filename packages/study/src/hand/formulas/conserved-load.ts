import type { Moments } from './process-time.ts';

/** Customers of one kind at a single server with Poisson arrivals. */
export interface CustomerClass {
  /** Customers an hour. */
  readonly arrivalRate: number;
  readonly service: Moments;
}

/** Mean hours of work that an arriving customer finds in service: the sum of λ E[S²] / 2. */
export function workInService(classes: readonly CustomerClass[]): number {
  return classes.reduce(
    (sum, { arrivalRate, service }) => sum + (arrivalRate * (service.variance + service.mean ** 2)) / 2,
    0,
  );
}

/**
 * What no order of serving can change: the sum over classes of utilization × mean wait, u W0 / (1 − u). Who is served
 * sooner is served at the cost of others, as long as nobody is interrupted and no server idles while work waits.
 * Source: L. Kleinrock, "Queueing Systems", volume 2 (1976), section 3.4, conservation law (from memory).
 */
export function conservedLoad(classes: readonly CustomerClass[]): number {
  const utilization = utilizationOf(classes);
  return (utilization * workInService(classes)) / (1 - utilization);
}

/**
 * Mean waits when the first class always goes before the second and so on, and nobody is interrupted.
 * Source: A. Cobham, "Priority assignment in waiting line problems", Operations Research 2 (1954), 70–76 (from memory).
 */
export function priorityWaits(classes: readonly CustomerClass[]): number[] {
  const inService = workInService(classes);
  return classes.map((_, index) => {
    const before = utilizationOf(classes.slice(0, index));
    const upTo = utilizationOf(classes.slice(0, index + 1));
    return inService / ((1 - before) * (1 - upTo));
  });
}

function utilizationOf(classes: readonly CustomerClass[]): number {
  return classes.reduce((sum, { arrivalRate, service }) => sum + arrivalRate * service.mean, 0);
}
