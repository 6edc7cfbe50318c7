import type { Run } from '@buildweek/results';
import { formatLevel } from './format.ts';

/** What every band and whisker of a chart means, in words. */
export function intervalWords(run: Run): string {
  return `${formatLevel(run.level)} confidence interval of the average, from ${run.replications} replications`;
}

/** The measured weeks in words: "13 weeks". */
export function weeksWords(run: Run): string {
  return run.weeks === 1 ? '1 week' : `${run.weeks} weeks`;
}
