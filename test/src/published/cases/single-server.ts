import {
  deviationOfLeadTime,
  deviationOfWait,
  jobsInLab,
  jobsWithin,
  leadTimePercentile,
  meanLeadTime,
  meanWait,
  onTime,
  queueLength,
  stationShare,
  waitPercentile,
} from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/**
 * One server with exponential times. 10 ignored weeks are 1680 h, 18 times the relaxation time
 * 1 / (1 − √0.8)² = 90 h of this queue.
 */
export const SINGLE_SERVER: PublishedCase = {
  title: 'Q01: one server, exponential gaps and times (M/M/1)',
  source:
    'Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th edition, chapter 2 (formulas from memory; closed form, recomputed)',
  scenario: `
buildweek: 1
name: one server
simulate: { weeks: 155, ignored weeks: 10, replications: 100, seed: Q01 }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.8 per hour, when: any time, promise: 23.02585093 h }
`,
  traced: true,
  values: [
    { what: 'utilization', truth: 0.8, kind: 'share', estimate: stationShare('server', 'run') },
    { what: 'chance of an empty lab', truth: 0.2, kind: 'share', estimate: stationShare('server', 'idle') },
    { what: 'fewer than five in the lab', truth: 1 - 0.32768, kind: 'share', estimate: jobsWithin(4) },
    { what: 'L', truth: 4, kind: 'mean', estimate: jobsInLab },
    { what: 'Lq', truth: 3.2, kind: 'mean', estimate: queueLength('server') },
    { what: 'W, hours', truth: 5, kind: 'mean', estimate: meanLeadTime },
    { what: 'Wq, hours', truth: 4, kind: 'mean', estimate: meanWait('server') },
    { what: 'lead time, 50 %', truth: 3.4657359028, kind: 'percentile', estimate: leadTimePercentile(0.5) },
    { what: 'lead time, 90 %', truth: 11.512925465, kind: 'percentile', estimate: leadTimePercentile(0.9) },
    { what: 'lead time, 95 %', truth: 14.9786613678, kind: 'percentile', estimate: leadTimePercentile(0.95) },
    // The 99 % point is what is promised.
    { what: 'lead time within 23.03 h', truth: 0.99, kind: 'share', estimate: onTime },
    {
      what: 'wait, 95 %',
      truth: 13.8629436112,
      kind: 'percentile',
      estimate: waitPercentile('server', 0.95),
    },
    { what: 'deviation of lead time', truth: 5, kind: 'deviation', estimate: deviationOfLeadTime },
    {
      what: 'deviation of wait',
      truth: 4.8989794856,
      kind: 'deviation',
      estimate: deviationOfWait('server'),
    },
  ],
};
