import { rounded } from '../rounded.ts';
import type { StudySuite } from './study-suite.ts';

/** An interval, and whether it holds what it should. Hours, rounded. */
export interface Holding {
  readonly low: number;
  readonly high: number;
  readonly holds: boolean;
}

/** What came of one repetition. */
export interface Outcome {
  readonly seed: string;
  readonly replications: number;
  readonly jobs: number;
  /** Intervals of the long run. */
  readonly mean: Holding;
  readonly p95: Holding;
  /** What one period was predicted to bring as its own 95 % point … */
  readonly prediction: Holding;
  /** … and what the next one brought. */
  readonly next: number;
}

/** Which intervals an outcome has. */
export type IntervalName = 'mean' | 'p95' | 'prediction';

/** Names of what stands in a line, in their order. */
export const COLUMNS =
  'seed,replications,jobs,mean low,mean high,mean holds,p95 low,p95 high,p95 holds,prediction low,prediction high,prediction holds,next p95';

/** An interval with its ends rounded, judged before they were. */
export function holding(interval: { low: number; high: number }, target: number): Holding {
  const { low, high } = interval;
  return { low: rounded(low), high: rounded(high), holds: low <= target && target <= high };
}

export function lineOf({ seed, replications, jobs, mean, p95, prediction, next }: Outcome): string {
  const intervals = [mean, p95, prediction].flatMap(({ low, high, holds }) => [
    low,
    high,
    holds ? 'yes' : 'no',
  ]);
  return [seed, replications, jobs, ...intervals, next].join(',');
}

/** @throws Error when the line is not one that `lineOf` writes */
export function outcomeOf(line: string): Outcome {
  const cells = line.split(',');
  const number = (position: number): number => Number(cells[position] ?? Number.NaN);
  const interval = (position: number): Holding => ({
    low: number(position),
    high: number(position + 1),
    holds: cells[position + 2] === 'yes',
  });
  const outcome = {
    seed: cells[0] ?? '',
    replications: number(1),
    jobs: number(2),
    mean: interval(3),
    p95: interval(6),
    prediction: interval(9),
    next: number(12),
  };
  if (lineOf(outcome) !== line) throw new Error(`This is not a line of a record: "${line}"`);
  return outcome;
}

/** What an interval of an outcome should hold, hours. */
export function targetOf(suite: StudySuite, outcome: Outcome, name: IntervalName): number {
  if (name === 'mean') return suite.truth.meanLeadTime;
  return name === 'p95' ? suite.truth.p95LeadTime : outcome.next;
}
