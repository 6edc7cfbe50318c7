/** A queue in front of one server, told by means and squared coefficients of variation (variance over mean squared). */
export interface SingleServerQueue {
  /** Below 1. */
  readonly utilization: number;
  readonly meanServiceHours: number;
  readonly arrivalVariability: number;
  readonly serviceVariability: number;
}

/**
 * Mean wait, approximately; exact for Poisson arrivals, where it is the formula of Pollaczek and Khinchine.
 * Source: J. F. C. Kingman, "The single server queue in heavy traffic", Proceedings of the Cambridge Philosophical
 * Society 57 (1961), 902–904 (from memory).
 */
export function kingmanWait(queue: SingleServerQueue): number {
  const { utilization, meanServiceHours, arrivalVariability, serviceVariability } = queue;
  return (
    ((arrivalVariability + serviceVariability) / 2) * (utilization / (1 - utilization)) * meanServiceHours
  );
}

/**
 * Mean wait, corrected for arrivals that are more or less even than Poisson ones.
 * Source: W. Kraemer and M. Langenbach-Belz, "Approximate formulae for the delay in the queueing system GI/G/1",
 * 8th International Teletraffic Congress (1976), 235-1/8 (from memory).
 */
export function kraemerLangenbachBelzWait(queue: SingleServerQueue): number {
  const { utilization, arrivalVariability: arrivals, serviceVariability: service } = queue;
  if (arrivals + service === 0) return 0;
  const exponent =
    arrivals <= 1
      ? -((2 * (1 - utilization)) / (3 * utilization)) * ((1 - arrivals) ** 2 / (arrivals + service))
      : -(1 - utilization) * ((arrivals - 1) / (arrivals + 4 * service));
  return kingmanWait(queue) * Math.exp(exponent);
}

/**
 * A mean wait that no single-server queue exceeds: λ (variance of gaps + variance of service) / (2 (1 − u)).
 * Source: J. F. C. Kingman, "Some inequalities for the queue GI/G/1", Biometrika 49 (1962), 315–324 (from memory).
 */
export function kingmanBound(queue: SingleServerQueue): number {
  const { utilization, meanServiceHours, arrivalVariability, serviceVariability } = queue;
  const arrivalRate = utilization / meanServiceHours;
  const variances = arrivalVariability / arrivalRate ** 2 + serviceVariability * meanServiceHours ** 2;
  return (arrivalRate * variances) / (2 * (1 - utilization));
}
