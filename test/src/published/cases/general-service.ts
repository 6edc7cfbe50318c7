import {
  deviationOfLeadTime,
  deviationOfWait,
  jobsInLab,
  meanLeadTime,
  meanWait,
  stationShare,
} from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/**
 * One server and times of any law. The relaxation time is about (1 + c²) / 2 times that of exponential times, with c
 * the coefficient of variation: 108, 20, 122 and 38 h. 10 ignored weeks, 1680 h, are more than ten times that.
 */

const TAKACS =
  'Pollaczek-Khinchine; second moment by the recurrence of Takács (Gross & Harris, section 5.1; closed form, recomputed)';
const POLLACZEK_KHINCHINE = 'Pollaczek-Khinchine (closed form, recomputed)';

export const LOGNORMAL_TIMES: PublishedCase = {
  title: 'Q07: one server, lognormal times (M/G/1)',
  source: TAKACS,
  scenario: `
buildweek: 1
name: lognormal times
simulate: { weeks: 190, ignored weeks: 10, replications: 100, seed: Q07 }
stations:
  server: {}
routes:
  visit: # the squared coefficient of variation is 0.5
    - serve: { on: server, takes: "lognormal mean 1.6 h, variation 0.7071067812" }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.5 per hour, when: any time }
`,
  values: [
    { what: 'utilization', truth: 0.8, kind: 'share', estimate: stationShare('server', 'run') },
    { what: 'Wq, hours', truth: 4.8, kind: 'mean', estimate: meanWait('server') },
    { what: 'W, hours', truth: 6.4, kind: 'mean', estimate: meanLeadTime },
    { what: 'L', truth: 3.2, kind: 'mean', estimate: jobsInLab },
    {
      what: 'deviation of wait',
      truth: 5.8787753827,
      kind: 'deviation',
      estimate: deviationOfWait('server'),
    },
    { what: 'deviation of lead time', truth: 5.9866518188, kind: 'deviation', estimate: deviationOfLeadTime },
  ],
};

export const UNIFORM_TIMES: PublishedCase = {
  title: 'Q08 (a): one server, uniform times (M/G/1)',
  source: POLLACZEK_KHINCHINE,
  scenario: `
buildweek: 1
name: uniform times
simulate: { weeks: 60, ignored weeks: 10, replications: 100, seed: Q08 a }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: uniform 30 to 90 min }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.7 per hour, when: any time }
`,
  values: [{ what: 'Wq, hours', truth: 1.2638888889, kind: 'mean', estimate: meanWait('server') }],
};

export const HYPEREXPONENTIAL_TIMES: PublishedCase = {
  title: 'Q08 (b): one server, hyperexponential times (M/G/1)',
  source: POLLACZEK_KHINCHINE,
  scenario: `
buildweek: 1
name: hyperexponential times
simulate: { weeks: 370, ignored weeks: 10, replications: 100, seed: Q08 b }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: "hyperexponential 10 % mean 5.5 h, 90 % mean 30 min" }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.7 per hour, when: any time }
`,
  values: [{ what: 'Wq, hours', truth: 7.5833333333, kind: 'mean', estimate: meanWait('server') }],
};

export const TWO_TIMES: PublishedCase = {
  title: 'Q08 (c): one server, one of two times (M/G/1)',
  source: POLLACZEK_KHINCHINE,
  scenario: `
buildweek: 1
name: one of two times
simulate: { weeks: 90, ignored weeks: 10, replications: 100, seed: Q08 c }
stations:
  server: {}
routes:
  visit: # half an hour in four of five cases, else three hours
    - serve: { on: server, takes: "measured 0.5, 0.5, 0.5, 0.5, 3 h" }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.7 per hour, when: any time }
`,
  values: [{ what: 'Wq, hours', truth: 2.3333333333, kind: 'mean', estimate: meanWait('server') }],
};
