import { deviationOfLeadTime, leadTimePercentile, meanLeadTime, onTime, queueLength } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/** Two servers in a row. 10 ignored weeks are 1680 h, 18 times the relaxation time of the slower one (90 h). */
export const TANDEM: PublishedCase = {
  title: 'Q27: two servers in a row (M/M/1 and M/M/1)',
  source: 'Burke 1956, Reich 1957: times at both are independent and exponential (closed form, recomputed)',
  scenario: `
buildweek: 1
name: two in a row
simulate: { weeks: 120, ignored weeks: 10, replications: 100, seed: Q27 }
stations:
  first: {}
  second: {}
routes:
  visit:
    - serve: { on: first, takes: exponential mean 1 h }
    - serve again: { on: second, takes: exponential mean 48 min }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.8 per hour, when: any time, promise: 12 h }
`,
  values: [
    { what: 'mean lead time, hours', truth: 7.2222222222, kind: 'mean', estimate: meanLeadTime },
    { what: 'deviation of lead time', truth: 5.4715876675, kind: 'deviation', estimate: deviationOfLeadTime },
    { what: 'lead time, 90 %', truth: 14.3906234543, kind: 'percentile', estimate: leadTimePercentile(0.9) },
    { what: 'lead time, 95 %', truth: 17.8921689475, kind: 'percentile', estimate: leadTimePercentile(0.95) },
    { what: 'lead time within 12 h', truth: 0.8403209488, kind: 'share', estimate: onTime },
    { what: 'Lq of the second', truth: 1.1377777778, kind: 'mean', estimate: queueLength('second') },
  ],
};
