/** Mean in hours and variance in hours squared of a time. */
export interface Moments {
  readonly mean: number;
  readonly variance: number;
}

/** Random stops that pause the work, which then goes on where it was. */
export interface Outages {
  /** Mean hours of running from one stop to the next. */
  readonly hoursToFailure: number;
  readonly repair: Moments;
}

/** The squared coefficient of variation of a time; 0 for no time. */
export function variabilityOf({ mean, variance }: Moments): number {
  return mean === 0 ? 0 : variance / mean ** 2;
}

/** Share of the time in which a machine that stops now and then can work. Source as for {@link withOutages}. */
export function availability({ hoursToFailure, repair }: Outages): number {
  return hoursToFailure / (hoursToFailure + repair.mean);
}

/**
 * Effective process time of a machine with preemptive outages: te = t0 / A,
 * ce² = c0² + (1 + cr²) A (1 − A) mr / t0.
 * Source: W. J. Hopp and M. L. Spearman, "Factory Physics" (3rd ed. 2008), section 8.4.2 (from memory).
 */
export function withOutages(natural: Moments, outages: Outages): Moments {
  if (natural.mean === 0) return natural;
  const available = availability(outages);
  const mean = natural.mean / available;
  const { repair } = outages;
  const outagePart = (1 + variabilityOf(repair)) * available * (1 - available) * (repair.mean / natural.mean);
  return { mean, variance: (variabilityOf(natural) + outagePart) * mean ** 2 };
}

/**
 * Effective process time of a job when a set-up comes after so many jobs on average, at random:
 * te = t0 + ts / Ns, σe² = σ0² + σs² / Ns + (Ns − 1) / Ns² · ts². Source as for {@link withOutages}, section 8.4.3.
 */
export function withSetUps(natural: Moments, setUp: Moments, jobsPerSetUp: number): Moments {
  return {
    mean: natural.mean + setUp.mean / jobsPerSetUp,
    variance:
      natural.variance +
      setUp.variance / jobsPerSetUp +
      ((jobsPerSetUp - 1) / jobsPerSetUp ** 2) * setUp.mean ** 2,
  };
}

/**
 * Effective process time of work that is repeated until it is good, each pass bad with the same chance: a sum of a
 * geometric number of passes. Source: Hopp and Spearman, chapter 12 (from memory); the variance of a random sum.
 */
export function withRework(pass: Moments, badShare: number): Moments {
  const good = 1 - badShare;
  return {
    mean: pass.mean / good,
    variance: pass.variance / good + (badShare * pass.mean ** 2) / good ** 2,
  };
}

/** A time that is one of several, each as often as its weight says: as what one machine does for several parts. */
export function mixtureOf(times: readonly { readonly weight: number; readonly time: Moments }[]): Moments {
  const total = times.reduce((sum, { weight }) => sum + weight, 0);
  if (total === 0) return { mean: 0, variance: 0 };
  const mean = times.reduce((sum, { weight, time }) => sum + (weight / total) * time.mean, 0);
  const square = times.reduce(
    (sum, { weight, time }) => sum + (weight / total) * (time.variance + time.mean ** 2),
    0,
  );
  return { mean, variance: Math.max(0, square - mean ** 2) };
}

/** The sum of independent times. */
export function sumOf(times: readonly Moments[]): Moments {
  return {
    mean: times.reduce((sum, { mean }) => sum + mean, 0),
    variance: times.reduce((sum, { variance }) => sum + variance, 0),
  };
}
