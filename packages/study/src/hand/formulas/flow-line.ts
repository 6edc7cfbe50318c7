/** A step of a line: like machines, each of which takes so long for a job. */
export interface LineStation {
  readonly machines: number;
  readonly processHours: number;
}

/** What a line makes with a fixed number of jobs in it. */
export interface LinePerformance {
  /** Jobs an hour. */
  readonly throughput: number;
  /** Hours of a job in the line. */
  readonly cycleHours: number;
}

/**
 * Source of all formulas here: W. J. Hopp and M. L. Spearman, "Factory Physics" (3rd ed. 2008), sections 7.2 and 7.3
 * (from memory).
 */

/** Jobs an hour of the station with the least capacity. */
export function bottleneckRate(line: readonly LineStation[]): number {
  return Math.min(...line.map(({ machines, processHours }) => machines / processHours));
}

/** Hours that a job needs alone in the line. */
export function rawProcessHours(line: readonly LineStation[]): number {
  return line.reduce((total, { processHours }) => total + processHours, 0);
}

/** Jobs in a line without variability with which it just reaches its bottleneck rate without waiting. */
export function criticalWorkInProgress(line: readonly LineStation[]): number {
  return bottleneckRate(line) * rawProcessHours(line);
}

/** Nothing varies: nobody waits until the bottleneck is fed. */
export function bestCase(line: readonly LineStation[], jobs: number): LinePerformance {
  const throughput = Math.min(jobs / rawProcessHours(line), bottleneckRate(line));
  return { throughput, cycleHours: hoursInLine(jobs, throughput) };
}

/** All jobs travel together, as one batch. */
export function worstCase(line: readonly LineStation[], jobs: number): LinePerformance {
  const throughput = 1 / rawProcessHours(line);
  return { throughput, cycleHours: hoursInLine(jobs, throughput) };
}

/**
 * As random as can be in practice: single machines, balanced, exponential times. A line that does worse has a reason
 * that is worth looking for. The formula is used for parallel machines too, as the source does.
 */
export function practicalWorstCase(line: readonly LineStation[], jobs: number): LinePerformance {
  const throughput = (jobs / (criticalWorkInProgress(line) + jobs - 1)) * bottleneckRate(line);
  return { throughput, cycleHours: hoursInLine(jobs, throughput) };
}

/**
 * The fewest jobs in the line with which the practical worst case reaches a share of the bottleneck rate:
 * w / (W0 + w − 1) ≥ share.
 */
export function jobsForShareOfRate(line: readonly LineStation[], share: number): number {
  const jobs = (share / (1 - share)) * (criticalWorkInProgress(line) - 1);
  // A whole number that rounding made a little larger is that number.
  return Math.max(1, Math.ceil(jobs - 1e-9));
}

/**
 * Little's law: jobs in the system = rate × hours in it.
 * Source: J. D. C. Little, "A proof for the queuing formula L = λ W", Operations Research 9 (1961), 383–387.
 */
export function hoursInLine(jobs: number, throughput: number): number {
  return jobs / throughput;
}
