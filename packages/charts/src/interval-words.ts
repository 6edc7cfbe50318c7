import type { Run } from '@buildweek/results';
import { formatNumber } from './format.ts';

/** What every band and whisker of a chart means, in words. */
export function intervalWords(run: Run): string {
  const level = formatNumber(run.level * 100, 0);
  return `${level}\u00a0% confidence interval of the long-run average, from ${run.replications} replications`;
}

/** The measured period in words: "13 weeks". */
export function periodWords(run: Run): string {
  return run.weeks === 1 ? '1 week' : `${run.weeks} weeks`;
}
