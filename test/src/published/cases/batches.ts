import { meanBatch, meanLeadTime, meanWait, queueLength, stationShare } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/**
 * A station that takes up to five jobs at once: an oven with exponential times of 2 h on average, 1.5 jobs an hour,
 * utilization 0.6. 4 ignored weeks are 672 h; its own relaxation time is below 30 h (that of one server at 0.6 with
 * times of 2 h is 1 / (0.5 (1 − √0.6)²) = 39 h, and batches catch up faster).
 */

export const UP_TO_FIVE: PublishedCase = {
  title: 'Q21: a batch of whatever waits, up to five (M/M(1,5)/1)',
  source: 'Bailey 1954, Neuts 1967: root of a polynomial (closed form, recomputed)',
  scenario: `
buildweek: 1
name: up to five
simulate: { weeks: 40, ignored weeks: 4, replications: 100, seed: Q21 }
stations:
  oven: { holds: 5 jobs, start: at once }
routes:
  visit:
    - bake: { on: oven, takes: exponential mean 2 h }
parts:
  part: { route: visit }
demand:
  part: { jobs: 1.5 per hour, when: any time }
`,
  values: [
    {
      what: 'chance of an idle oven',
      truth: 0.0523355187,
      kind: 'share',
      estimate: stationShare('oven', 'idle'),
    },
    { what: 'Lq', truth: 4.7722748062, kind: 'mean', estimate: queueLength('oven') },
    { what: 'Wq, hours', truth: 3.1815165375, kind: 'mean', estimate: meanWait('oven') },
    { what: 'W, hours', truth: 5.1815165375, kind: 'mean', estimate: meanLeadTime },
    { what: 'mean batch, jobs', truth: 3.1656773671, kind: 'mean', estimate: meanBatch('oven') },
  ],
};

export const TEN_COLLECTED: PublishedCase = {
  title: 'F06: a build that is started when ten parts are collected',
  source: 'Hopp & Spearman, Factory Physics, chapter 9, wait-to-batch time (closed form)',
  scenario: `
buildweek: 1
name: ten collected
simulate: { weeks: 20, ignored weeks: 1, replications: 60, seed: F06 }
machines:
  printer: { holds: 10 parts, start: when full }
routes:
  printed:
    - build: { on: printer }
parts:
  part: { route: printed, print: 1 s per build }
demand:
  part: { jobs: 4 per hour, when: any time }
`,
  values: [
    // (k - 1) / (2 ra); the second of printing hardly ever meets a full batch.
    { what: 'wait to batch, hours', truth: 1.125, kind: 'mean', estimate: meanWait('printer') },
    { what: 'lead time, hours', truth: 1.125 + 1 / 3600, kind: 'mean', estimate: meanLeadTime },
  ],
};

export const EXACTLY_FIVE: PublishedCase = {
  title: 'Q22: only full batches of five (M/M[5]/1)',
  source: 'Gross & Harris, section 3.2: equivalence with E5/M/1 (closed form, recomputed)',
  scenario: `
buildweek: 1
name: exactly five
simulate: { weeks: 40, ignored weeks: 4, replications: 100, seed: Q22 }
stations:
  oven: { holds: 5 jobs, start: when full }
routes:
  visit:
    - bake: { on: oven, takes: exponential mean 2 h }
parts:
  part: { route: visit }
demand:
  part: { jobs: 1.5 per hour, when: any time }
`,
  values: [
    // 4/3 h until the batch is full, and then 1.3572182986 h in the queue of batches.
    { what: 'Wq, hours', truth: 2.690551632, kind: 'mean', estimate: meanWait('oven') },
    { what: 'W, hours', truth: 4.690551632, kind: 'mean', estimate: meanLeadTime },
  ],
};

export const THREE_TO_FIVE: PublishedCase = {
  title: 'Q23: a batch starts with three and takes up to five (M/M(3,5)/1)',
  source: 'Neuts 1967; Chaudhry & Templeton 1983 (numerically exact, chain of 1500 states)',
  scenario: `
buildweek: 1
name: three to five
simulate: { weeks: 40, ignored weeks: 4, replications: 100, seed: Q23 }
stations:
  oven: { holds: 5 jobs, start: when 60 % full }
routes:
  visit:
    - bake: { on: oven, takes: exponential mean 2 h }
parts:
  part: { route: visit }
demand:
  part: { jobs: 1.5 per hour, when: any time }
`,
  values: [
    { what: 'Lq', truth: 4.1786122154, kind: 'mean', estimate: queueLength('oven') },
    { what: 'Wq, hours', truth: 2.785741477, kind: 'mean', estimate: meanWait('oven') },
    { what: 'W, hours', truth: 4.785741477, kind: 'mean', estimate: meanLeadTime },
    { what: 'utilization', truth: 0.7714430465, kind: 'share', estimate: stationShare('oven', 'run') },
  ],
};

export const CONSTANT_BATCHES: PublishedCase = {
  title: 'Q25: constant batches of whatever waits, up to five (M/D(1,5)/1)',
  source: 'Bailey 1954, Downton 1955: embedded chain (numerically exact)',
  scenario: `
buildweek: 1
name: constant batches
simulate: { weeks: 20, ignored weeks: 4, replications: 100, seed: Q25 }
stations:
  oven: { holds: 5 jobs, start: at once }
routes:
  visit:
    - bake: { on: oven, takes: 2 h }
parts:
  part: { route: visit }
demand:
  part: { jobs: 1.5 per hour, when: any time }
`,
  values: [
    { what: 'Lq', truth: 1.67351715, kind: 'mean', estimate: queueLength('oven') },
    { what: 'Wq, hours', truth: 1.1156781, kind: 'mean', estimate: meanWait('oven') },
    { what: 'W, hours', truth: 3.1156781, kind: 'mean', estimate: meanLeadTime },
    { what: 'utilization', truth: 0.9854625009, kind: 'share', estimate: stationShare('oven', 'run') },
  ],
};

/** Its relaxation time is about that of exponential times, halved: 90 h in units of 2 h. */
export const BATCHES_OF_ONE: PublishedCase = {
  title: 'Q25: batches of one are a queue (M/D/1)',
  source: 'Erlang 1909 (closed form, recomputed)',
  scenario: `
buildweek: 1
name: batches of one
simulate: { weeks: 180, ignored weeks: 10, replications: 100, seed: Q25 one }
stations:
  oven: { holds: 1 job, start: at once }
routes:
  visit:
    - bake: { on: oven, takes: 2 h }
parts:
  part: { route: visit }
demand:
  part: { jobs: 0.4 per hour, when: any time }
`,
  values: [{ what: 'Wq, hours', truth: 4, kind: 'mean', estimate: meanWait('oven') }],
};
