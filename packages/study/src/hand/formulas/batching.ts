/**
 * Mean hours that a job waits until its batch is complete: the first waits for all others, the last for none.
 * Source: W. J. Hopp and M. L. Spearman, "Factory Physics" (3rd ed. 2008), chapter 9, wait-to-batch time (from memory).
 * @param jobsPerBatch at least 1
 * @param arrivalRate jobs an hour
 */
export function waitToBatch(jobsPerBatch: number, arrivalRate: number): number {
  return (jobsPerBatch - 1) / (2 * arrivalRate);
}
