import { jobsInLab, leadTimePercentile, meanWait, waitPercentile } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/**
 * One server and times of several exponential phases. The relaxation time is below that of exponential times (90 h);
 * 10 ignored weeks are 1680 h.
 */

const SOURCE =
  'Mean by Pollaczek-Khinchine; points by the phase-type representation of the wait, M. F. Neuts 1981 (numerically exact)';

export const TWO_PHASES: PublishedCase = {
  title: 'Q10: one server, times of two phases (M/E2/1)',
  source: SOURCE,
  scenario: `
buildweek: 1
name: two phases
simulate: { weeks: 140, ignored weeks: 10, replications: 100, seed: Q10 two }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: "erlang 2, mean 1 h" }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.8 per hour, when: any time }
`,
  values: [
    { what: 'Wq, hours', truth: 3, kind: 'mean', estimate: meanWait('server') },
    // Published as the number in the queue plus the utilization: L = λ (Wq + 1 h).
    { what: 'L', truth: 3.2, kind: 'mean', estimate: jobsInLab },
    { what: 'wait, 95 %', truth: 10.242756528, kind: 'percentile', estimate: waitPercentile('server', 0.95) },
    { what: 'lead time, 90 %', truth: 8.782288886, kind: 'percentile', estimate: leadTimePercentile(0.9) },
    { what: 'lead time, 95 %', truth: 11.318037808, kind: 'percentile', estimate: leadTimePercentile(0.95) },
  ],
};

export const FOUR_PHASES: PublishedCase = {
  title: 'Q10: one server, times of four phases (M/E4/1)',
  source: SOURCE,
  scenario: `
buildweek: 1
name: four phases
simulate: { weeks: 120, ignored weeks: 10, replications: 100, seed: Q10 four }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: "erlang 4, mean 1 h" }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.8 per hour, when: any time }
`,
  values: [
    { what: 'Wq, hours', truth: 2.5, kind: 'mean', estimate: meanWait('server') },
    { what: 'lead time, 95 %', truth: 9.476218787, kind: 'percentile', estimate: leadTimePercentile(0.95) },
  ],
};
