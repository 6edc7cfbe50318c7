import { meanLeadTimeOf, meanWait, waitOfStep } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/**
 * Three classes of customers at one server: rush jobs, jobs with a promise, and jobs without one, which come last.
 * 10 ignored weeks are 1680 h, above ten times the relaxation time at utilization 0.8.
 */
export const PRIORITIES: PublishedCase = {
  title: 'Q17: three classes, nobody is interrupted (M/G/1 with priorities)',
  source: 'Cobham 1954; conservation law of Kleinrock (closed form, recomputed)',
  scenario: `
buildweek: 1
name: three classes
simulate: { weeks: 170, ignored weeks: 10, replications: 100, seed: Q17 }
stations:
  server: {}
routes:
  first: [serve: { on: server, takes: exponential mean 1 h }]
  second: [serve: { on: server, takes: 1 h }]
  third: [serve: { on: server, takes: exponential mean 1.5 h }]
parts:
  first: { route: first }
  second: { route: second }
  third: { route: third }
demand:
  first: { jobs: 0.2 per hour, when: any time, rush: 100 % }
  second: { jobs: 0.3 per hour, when: any time, promise: 48 h }
  third: { jobs: 0.2 per hour, when: any time }
`,
  values: [
    { what: 'Wq of the first, hours', truth: 1, kind: 'mean', estimate: waitOfStep('first', 'serve', 'run') },
    {
      what: 'Wq of the second, hours',
      truth: 2,
      kind: 'mean',
      estimate: waitOfStep('second', 'serve', 'run'),
    },
    { what: 'Wq of the third, hours', truth: 8, kind: 'mean', estimate: waitOfStep('third', 'serve', 'run') },
  ],
};

const INTERRUPTED = 'White & Christie 1958; Gross & Harris, section 3.4 (closed form, recomputed)';

/** The third class is not there for the first two, who interrupt it. */
export const INTERRUPTED_SECOND: PublishedCase = {
  title: 'Q18: two classes, the first interrupts the second (M/G/1, preemptive resume)',
  source: INTERRUPTED,
  scenario: `
buildweek: 1
name: the first interrupts the second
simulate: { weeks: 60, ignored weeks: 10, replications: 100, seed: Q18 second }
dispatch: { rush interrupts: yes }
people:
  server: { hours: always, skills: serve }
routes:
  first: [serve: { by: serve, takes: exponential mean 1 h, may pause: yes }]
  second: [serve: { by: serve, takes: 1 h, may pause: yes }]
parts:
  first: { route: first }
  second: { route: second }
demand:
  first: { jobs: 0.2 per hour, when: any time, rush: 100 % }
  second: { jobs: 0.3 per hour, when: any time }
`,
  values: [
    { what: 'lead time of the first, hours', truth: 1.25, kind: 'mean', estimate: meanLeadTimeOf('first') },
    {
      what: 'lead time of the second, hours',
      truth: 2.125,
      kind: 'mean',
      estimate: meanLeadTimeOf('second'),
    },
  ],
};

/** For the third class it does not matter in which order the first two, who interrupt it, are served. */
export const INTERRUPTED_THIRD: PublishedCase = {
  title: 'Q18: three classes, the first two interrupt the third (M/G/1, preemptive resume)',
  source: INTERRUPTED,
  scenario: `
buildweek: 1
name: the first two interrupt the third
simulate: { weeks: 115, ignored weeks: 10, replications: 100, seed: Q18 third }
dispatch: { rush interrupts: yes }
people:
  server: { hours: always, skills: serve }
routes:
  first: [serve: { by: serve, takes: exponential mean 1 h, may pause: yes }]
  second: [serve: { by: serve, takes: 1 h, may pause: yes }]
  third: [serve: { by: serve, takes: exponential mean 1.5 h, may pause: yes }]
parts:
  first: { route: first }
  second: { route: second }
  third: { route: third }
demand:
  first: { jobs: 0.2 per hour, when: any time, rush: 100 % }
  second: { jobs: 0.3 per hour, when: any time, rush: 100 % }
  third: { jobs: 0.2 per hour, when: any time }
`,
  values: [
    { what: 'lead time of the third, hours', truth: 11, kind: 'mean', estimate: meanLeadTimeOf('third') },
  ],
};

/** 5 ignored weeks are 840 h, hundreds of times 1 / (c µ − λ) = 1.25 h. */
export const PRIORITIES_AT_THREE: PublishedCase = {
  title: 'Q19: two classes at three servers (M/M/3 with priorities)',
  source: 'Cobham 1954, several servers (closed form, recomputed)',
  scenario: `
buildweek: 1
name: two classes at three servers
simulate: { weeks: 50, ignored weeks: 5, replications: 100, seed: Q19 }
stations:
  server: { count: 3 }
routes:
  visit: [serve: { on: server, takes: exponential mean 1 h }]
parts:
  first: { route: visit }
  second: { route: visit }
demand:
  first: { jobs: 1 per hour, when: any time, rush: 100 % }
  second: { jobs: 1.2 per hour, when: any time }
`,
  values: [
    {
      what: 'Wq of the first, hours',
      truth: 0.2710794297,
      kind: 'mean',
      estimate: waitOfStep('first', 'serve', 'run'),
    },
    {
      what: 'Wq of the second, hours',
      truth: 1.016547862,
      kind: 'mean',
      estimate: waitOfStep('second', 'serve', 'run'),
    },
  ],
};

/** Ignored weeks as for one server in order of arrival. */
export const SHORTEST_FIRST: PublishedCase = {
  title: 'Q38: one server, the shortest job first (M/M/1)',
  source: 'Phipps 1956 (numerical integral)',
  scenario: `
buildweek: 1
name: shortest first
simulate: { weeks: 120, ignored weeks: 10, replications: 100, seed: Q38 }
dispatch: { within: shortest work }
stations:
  server: {}
routes:
  visit: [serve: { on: server, takes: exponential mean 1 h per job }]
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.8 per hour, when: any time }
`,
  values: [{ what: 'Wq, hours', truth: 1.8822186162, kind: 'mean', estimate: meanWait('server') }],
};
