import {
  jobsInLab,
  jobsWithin,
  leadTimePercentile,
  meanLeadTime,
  meanWait,
  queueLength,
  rest,
  waitPercentile,
  waitsWithin,
} from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/** Three servers. 2 ignored weeks are 336 h, hundreds of times 1 / (c µ − λ) = 1/3 h. */
export const THREE_SERVERS: PublishedCase = {
  title: 'Q02: three servers (M/M/3)',
  source:
    'Gross & Harris, Fundamentals of Queueing Theory, section 2.3, example (from memory: Lq = 8/9, W = 0.481 h; recomputed)',
  scenario: `
buildweek: 1
name: three servers
simulate: { weeks: 20, ignored weeks: 2, replications: 100, seed: Q02 }
stations:
  server: { count: 3 }
routes:
  visit:
    - serve: { on: server, takes: exponential mean 20 min }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 6 per hour, when: any time }
`,
  traced: true,
  values: [
    { what: 'chance of an empty lab', truth: 1 / 9, kind: 'share', estimate: jobsWithin(0) },
    { what: 'chance to wait', truth: 4 / 9, kind: 'share', estimate: rest(waitsWithin('server', 0)) },
    { what: 'Lq', truth: 8 / 9, kind: 'mean', estimate: queueLength('server') },
    { what: 'Wq, hours', truth: 0.1481481481, kind: 'mean', estimate: meanWait('server') },
    { what: 'L', truth: 2.8888888889, kind: 'mean', estimate: jobsInLab },
    { what: 'W, hours', truth: 0.4814814815, kind: 'mean', estimate: meanLeadTime },
  ],
};

/** Five servers. 4 ignored weeks are 672 h, hundreds of times 1 / (c µ − λ) = 1 h. */
export const FIVE_SERVERS: PublishedCase = {
  title: 'Q03: five servers (M/M/5)',
  source:
    'Erlang C; the wait of those who wait is Exp(1), and so time plus wait Erlang 2 (closed form, recomputed)',
  scenario: `
buildweek: 1
name: five servers
simulate: { weeks: 56, ignored weeks: 4, replications: 100, seed: Q03 }
stations:
  server: { count: 5 }
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 4 per hour, when: any time }
`,
  values: [
    { what: 'chance to wait', truth: 0.5541125541, kind: 'share', estimate: rest(waitsWithin('server', 0)) },
    { what: 'Wq, hours', truth: 0.5541125541, kind: 'mean', estimate: meanWait('server') },
    { what: 'W, hours', truth: 1.5541125541, kind: 'mean', estimate: meanLeadTime },
    {
      what: 'chance to wait over 1 h',
      truth: 0.2038466168,
      kind: 'share',
      estimate: rest(waitsWithin('server', 1)),
    },
    { what: 'wait, 90 %', truth: 1.7121976464, kind: 'percentile', estimate: waitPercentile('server', 0.9) },
    { what: 'wait, 95 %', truth: 2.405344827, kind: 'percentile', estimate: waitPercentile('server', 0.95) },
    { what: 'lead time, 95 %', truth: 4.1974625784, kind: 'percentile', estimate: leadTimePercentile(0.95) },
  ],
};
