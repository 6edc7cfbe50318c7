import { jobsInLab, meanLeadTime, stationShare } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/**
 * Orders of several parts: as parts that arrive together, and as one job of several pieces. An order is 3 h of work
 * that varies at most as an exponential time does, so the relaxation time is at most 3 h / (1 − √0.6)² = 59 h;
 * 10 ignored weeks are 1680 h.
 */

const SOURCE = 'Gaver 1959; Gross & Harris, section 3.1 (closed form, recomputed)';

export const THREE_AT_ONCE: PublishedCase = {
  title: 'Q26 (a): three parts arrive at once (M[3]/M/1)',
  source: SOURCE,
  scenario: `
buildweek: 1
name: three at once
simulate: { weeks: 100, ignored weeks: 10, replications: 100, seed: Q26 a }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h }
parts:
  part: { route: visit }
demand: # 0.2 orders per hour
  part: { jobs: 0.6 per hour, jobs at once: 3, when: any time }
`,
  values: [
    { what: 'utilization', truth: 0.6, kind: 'share', estimate: stationShare('server', 'run') },
    { what: 'L, parts', truth: 3, kind: 'mean', estimate: jobsInLab },
    { what: 'mean lead time of a part, hours', truth: 5, kind: 'mean', estimate: meanLeadTime },
  ],
};

export const ORDERS_OF_THREE: PublishedCase = {
  title: 'Q26 (a): orders of three parts, done with the last (M/E3/1)',
  source: SOURCE,
  scenario: `
buildweek: 1
name: orders of three
simulate: { weeks: 150, ignored weeks: 10, replications: 100, seed: Q26 order }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h per part }
parts:
  part: { route: visit }
demand:
  part: { jobs: 0.2 per hour, pieces: 3, when: any time }
`,
  values: [{ what: 'mean lead time of an order, hours', truth: 6, kind: 'mean', estimate: meanLeadTime }],
};

export const SOME_AT_ONCE: PublishedCase = {
  title: 'Q26 (b): a geometric number of parts arrives at once (M[X]/M/1)',
  source: SOURCE,
  scenario: `
buildweek: 1
name: some at once
simulate: { weeks: 180, ignored weeks: 10, replications: 100, seed: Q26 b }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h }
parts:
  part: { route: visit }
demand: # 0.2 orders per hour
  part: { jobs: 0.6 per hour, jobs at once: geometric mean 3, when: any time }
`,
  values: [
    { what: 'L, parts', truth: 4.5, kind: 'mean', estimate: jobsInLab },
    { what: 'mean lead time of a part, hours', truth: 7.5, kind: 'mean', estimate: meanLeadTime },
  ],
};
