import {
  deviationOfLeadTime,
  deviationOfWait,
  jobsInLab,
  meanLeadTime,
  meanWait,
  onTime,
  stationShare,
  waitPercentile,
  waitsWithin,
} from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/**
 * One server that always takes an hour. 10 ignored weeks are 1680 h, above thirty times the relaxation time, which is
 * about half of that of exponential times (90 h). The promise of 3 h asks for the share of those who wait at most 2 h.
 */
export const CONSTANT_TIMES: PublishedCase = {
  title: 'Q09: one server, constant times (M/D/1)',
  source: 'Erlang 1909, Crommelin 1932: series (closed form, recomputed)',
  scenario: `
buildweek: 1
name: constant times
simulate: { weeks: 110, ignored weeks: 10, replications: 100, seed: Q09 }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: 1 h }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.8 per hour, when: any time, promise: 3 h }
`,
  values: [
    { what: 'Wq, hours', truth: 2, kind: 'mean', estimate: meanWait('server') },
    { what: 'W, hours', truth: 3, kind: 'mean', estimate: meanLeadTime },
    { what: 'L', truth: 2.4, kind: 'mean', estimate: jobsInLab },
    { what: 'chance of an empty lab', truth: 0.2, kind: 'share', estimate: stationShare('server', 'idle') },
    { what: 'no wait', truth: 0.2, kind: 'share', estimate: waitsWithin('server', 0) },
    { what: 'wait within 1 h', truth: 0.4451081857, kind: 'share', estimate: waitsWithin('server', 1) },
    { what: 'wait within 2 h', truth: 0.6345199363, kind: 'share', estimate: onTime },
    { what: 'wait within 5 h', truth: 0.8995027618, kind: 'share', estimate: waitsWithin('server', 5) },
    { what: 'wait, 90 %', truth: 5.011511498, kind: 'percentile', estimate: waitPercentile('server', 0.9) },
    { what: 'wait, 95 %', truth: 6.620324997, kind: 'percentile', estimate: waitPercentile('server', 0.95) },
    { what: 'deviation of wait', truth: 2.309401077, kind: 'deviation', estimate: deviationOfWait('server') },
    // The time in service is constant, so that lead times vary as the waits do.
    { what: 'deviation of lead time', truth: 2.309401077, kind: 'deviation', estimate: deviationOfLeadTime },
  ],
};
