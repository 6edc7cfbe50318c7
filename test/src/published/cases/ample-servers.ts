import { jobsInHour, jobsInLab, jobsWithin } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/** A plain wait needs nobody: any number of customers at once. */

const SOURCE = 'Gross & Harris, Fundamentals of Queueing Theory; Takács 1962 (closed form, recomputed)';

function ample(name: string, simulate: string, wait: string): string {
  return `
buildweek: 1
name: ${name}
simulate: { ${simulate}, seed: ${name} }
routes:
  visit:
    - rest: { wait: "${wait}" }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 2.5 per hour, when: any time }
`;
}

/** 2 ignored weeks are 336 h, 84 times the time in service. */
const STEADY = 'weeks: 12, ignored weeks: 2, replications: 60';

/** From 0 to 4 h: 10 (1 − exp(−t / 4)) customers on average. @returns its mean over the hour that ends at t */
function growing(hour: number): number {
  return 10 - 40 * (Math.exp(-(hour - 1) / 4) - Math.exp(-hour / 4));
}

export const AMPLE_SERVERS: readonly PublishedCase[] = [
  {
    title: 'Q06: ample servers, exponential times (M/M/∞)',
    source: SOURCE,
    scenario: ample('Q06 exponential', STEADY, 'exponential mean 4 h'),
    traced: true,
    values: [
      { what: 'L', truth: 10, kind: 'mean', estimate: jobsInLab },
      { what: 'at most 15', truth: 0.9512595967, kind: 'share', estimate: jobsWithin(15) },
      // So 15 is the smallest number of servers that are all busy for at most 5 % of the time.
      { what: 'at most 14', truth: 0.9165415271, kind: 'share', estimate: jobsWithin(14) },
    ],
  },
  {
    title: 'Q06: ample servers, lognormal times (M/G/∞)',
    source: SOURCE,
    scenario: ample('Q06 lognormal', STEADY, 'lognormal mean 4 h, variation 1'),
    traced: true,
    values: [
      { what: 'L', truth: 10, kind: 'mean', estimate: jobsInLab },
      { what: 'at most 15', truth: 0.9512595967, kind: 'share', estimate: jobsWithin(15) },
    ],
  },
  {
    // Published: 6.321205588 after 4 h, which lies between the means of the hours before and after.
    title: 'Q06: ample servers that start empty, exponential times',
    source: SOURCE,
    scenario: ample(
      'Q06 from empty',
      'weeks: 1, ignored weeks: 0, replications: 2500',
      'exponential mean 4 h',
    ),
    values: [
      { what: 'customers in the hour to 04:00', truth: growing(4), kind: 'mean', estimate: jobsInHour(3) },
      { what: 'customers in the hour from 04:00', truth: growing(5), kind: 'mean', estimate: jobsInHour(4) },
    ],
  },
  {
    // Published: 5 after 2 h; up to 4 h nobody leaves, and the number grows by 2.5 an hour.
    title: 'Q06: ample servers that start empty, constant times',
    source: SOURCE,
    scenario: ample('Q06 constant', 'weeks: 1, ignored weeks: 0, replications: 3200', '4 h'),
    values: [
      { what: 'customers in the hour to 02:00', truth: 5 - 1.25, kind: 'mean', estimate: jobsInHour(1) },
      { what: 'customers in the hour from 02:00', truth: 5 + 1.25, kind: 'mean', estimate: jobsInHour(2) },
    ],
  },
];
