import { leadTimePercentile, meanWait } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/** One server and gaps that are not exponential. 10 ignored weeks are 1680 h, above 18 times the relaxation time. */

const SOURCE = 'Kendall 1953; Gross & Harris, section 5.3 (root found to 1e-12)';

export const CONSTANT_GAPS: PublishedCase = {
  title: 'Q11: one server, constant gaps (D/M/1)',
  source: SOURCE,
  scenario: `
buildweek: 1
name: constant gaps
simulate: { weeks: 120, ignored weeks: 10, replications: 100, seed: Q11 constant }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h }
parts:
  customer: { route: visit }
demand:
  customer: { every: 75 min }
`,
  values: [
    { what: 'Wq, hours', truth: 1.69273084, kind: 'mean', estimate: meanWait('server') },
    { what: 'lead time, 95 %', truth: 8.066700681, kind: 'percentile', estimate: leadTimePercentile(0.95) },
  ],
};

export const ERLANG_GAPS: PublishedCase = {
  title: 'Q11: one server, gaps of two phases (E2/M/1)',
  source: SOURCE,
  scenario: `
buildweek: 1
name: gaps of two phases
simulate: { weeks: 140, ignored weeks: 10, replications: 100, seed: Q11 two }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h }
parts:
  customer: { route: visit }
demand:
  customer: { every: "erlang 2, mean 75 min" }
`,
  values: [
    { what: 'Wq, hours', truth: 2.843979767, kind: 'mean', estimate: meanWait('server') },
    { what: 'lead time, 95 %', truth: 11.51553425, kind: 'percentile', estimate: leadTimePercentile(0.95) },
  ],
};

/** Constant times at several servers; the relaxation time is below that of one server. */
function constantTimes(servers: number, jobsPerHour: number, weeks: number, wait: number): PublishedCase {
  return {
    title: `Q12: ${servers} servers, constant times (M/D/${servers})`,
    source: 'Crommelin 1932: embedded chain (numerically exact)',
    scenario: `
buildweek: 1
name: constant times at ${servers} servers
simulate: { weeks: ${weeks}, ignored weeks: 5, replications: 100, seed: Q12 ${servers} servers }
stations:
  server: { count: ${servers} }
routes:
  visit:
    - serve: { on: server, takes: 1 h }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: ${jobsPerHour} per hour, when: any time }
`,
    values: [{ what: 'Wq, hours', truth: wait, kind: 'mean', estimate: meanWait('server') }],
  };
}

export const CONSTANT_TIMES_AT_SEVERAL: readonly PublishedCase[] = [
  constantTimes(2, 1.6, 65, 0.9032838793),
  constantTimes(4, 3.2, 36, 0.3860949308),
];
