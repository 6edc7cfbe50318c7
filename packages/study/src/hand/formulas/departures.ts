/**
 * How variable the flow is that leaves a station of like machines, as a squared coefficient of variation: the one
 * with which it arrives at the next station (the linking equation).
 * 1 + (1 − u²) (ca² − 1) + u² / √m (ce² − 1); for one machine (1 − u²) ca² + u² ce².
 * Source: W. J. Hopp and M. L. Spearman, "Factory Physics" (3rd ed. 2008), section 8.5 (from memory).
 */
export function departureVariability(
  utilization: number,
  machines: number,
  arrivalVariability: number,
  serviceVariability: number,
): number {
  const squared = utilization ** 2;
  return (
    1 + (1 - squared) * (arrivalVariability - 1) + (squared / Math.sqrt(machines)) * (serviceVariability - 1)
  );
}
