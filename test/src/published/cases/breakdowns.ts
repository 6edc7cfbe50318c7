import {
  deviationOfLeadTime,
  jobsInLab,
  meanLeadTime,
  meanWait,
  queueLength,
  rest,
  stationShare,
} from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/** One server that breaks down; what it was doing goes on after the repair. */

/** 10 ignored weeks are 1680 h, above twenty times the relaxation time at effective utilization 0.6. */
export const BREAKDOWNS_WHILE_BUSY: PublishedCase = {
  title: 'Q15: one server that breaks down while it is busy (M/M/1, preemptive resume)',
  source: 'Gaver 1962: completion time, and Pollaczek-Khinchine (closed form, recomputed)',
  scenario: `
buildweek: 1
name: breakdowns while busy
simulate: { weeks: 100, ignored weeks: 10, replications: 100, seed: Q15 }
stations:
  server:
    breaks down:
      every: about 10 h of running
      batch: goes on
      service: { response: 0 min, takes: exponential mean 2 h }
    noticed: monitored
routes:
  visit: [serve: { on: server, takes: exponential mean 1 h }]
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.5 per hour, when: any time }
`,
  values: [
    { what: 'Wq, hours', truth: 2.3, kind: 'mean', estimate: meanWait('server') },
    { what: 'W, hours', truth: 3.5, kind: 'mean', estimate: meanLeadTime },
    { what: 'L', truth: 1.75, kind: 'mean', estimate: jobsInLab },
    // Of the time in which it is busy or down, λ E[C] = 0.6, it works 5/6.
    {
      what: 'share of time at work',
      truth: 0.6 * 0.8333333333,
      kind: 'share',
      estimate: stationShare('server', 'run'),
    },
    { what: 'share of time down', truth: 0.6 / 6, kind: 'share', estimate: stationShare('server', 'down') },
  ],
};

/** Repairs and gaps of a hundred hours: 20 ignored weeks are 3360 h, 33 times that. */
export const BREAKDOWNS_ANY_TIME: PublishedCase = {
  title: 'Q16b: one server that breaks down at any time (M/M/1, preemptive resume)',
  source: 'White & Christie 1958 (closed form, recomputed)',
  scenario: `
buildweek: 1
name: breakdowns at any time
simulate: { weeks: 370, ignored weeks: 20, replications: 100, seed: Q16b }
stations:
  printer:
    breaks down:
      every: about 100 h by the clock
      batch: goes on
      service: { response: 0 min, takes: exponential mean 8 h }
    noticed: monitored
routes:
  visit: [print: { on: printer, takes: exponential mean 4 h }]
parts:
  part: { route: visit }
demand:
  part: { jobs: 0.12 per hour, when: any time }
`,
  values: [
    {
      what: 'availability',
      truth: 0.9259259259,
      kind: 'share',
      estimate: rest(stationShare('printer', 'down')),
    },
    { what: 'L', truth: 1.224067922, kind: 'mean', estimate: jobsInLab },
    { what: 'W, hours', truth: 10.20056601, kind: 'mean', estimate: meanLeadTime },
  ],
};

const EFFECTIVE_TIME =
  'W. J. Hopp and M. L. Spearman, Factory Physics, chapter 8.4, example (partly from memory; closed form, recomputed)';

/** @param upHours between failures @param repairHours both exponential */
function failing(upHours: number, repairHours: number): string {
  return `
    breaks down:
      every: about ${upHours} h of running
      batch: goes on
      service: { response: 0 min, takes: exponential mean ${repairHours} h }
    noticed: monitored`;
}

const HARE = failing(12.4, 248 / 60);
const TORTOISE = failing(1.9, 38 / 60);

/** One job follows the other, so that the time in the lab is the effective time of the process. */
function effectiveTime(name: string, station: string, weeks: number, variation: number): PublishedCase {
  return {
    title: `F01: effective time with breakdowns, ${name}`,
    source: EFFECTIVE_TIME,
    scenario: `
buildweek: 1
name: effective time of the ${name}
simulate: { weeks: ${weeks}, ignored weeks: 1, replications: 60, seed: F01 ${name} }
stations:
  station:${station}
routes:
  process: # the squared coefficient of variation is 0.05
    - make: { on: station, takes: "gamma mean 15 min, variation 0.2236067977" }
parts:
  part: { route: process }
demand:
  part: { kept in the lab: 1 job }
`,
    values: [
      { what: 'availability', truth: 0.75, kind: 'share', estimate: stationShare('station', 'run') },
      { what: 'effective time, hours', truth: 20 / 60, kind: 'mean', estimate: meanLeadTime },
      {
        what: 'deviation of it',
        truth: Math.sqrt(variation) * (20 / 60),
        kind: 'deviation',
        estimate: deviationOfLeadTime,
      },
    ],
  };
}

export const EFFECTIVE_TIMES: readonly PublishedCase[] = [
  effectiveTime('hare', HARE, 25, 6.25),
  effectiveTime('tortoise', TORTOISE, 20, 1),
];

/**
 * The hare as a queue. At utilization 0.958 and with so variable times the relaxation time,
 * 3.6 · 20 min / (1 − √0.958)², is 16 weeks (a bias dies away faster at first, so that 80 ignored weeks do), and a
 * standard error of 1 % would take minutes. 10 % is sharp enough here, where times that are 5 % longer have no
 * equilibrium at all; the utilization is known to 1 %. The wait is exact by Pollaczek-Khinchine; that of a second
 * station behind it is published as an approximation and not held against anything.
 */
export const HARE_QUEUE: PublishedCase = {
  title: 'F02: a station with breakdowns near its capacity',
  source:
    'W. J. Hopp and M. L. Spearman, Factory Physics, chapter 8.6 (from memory: 27.79 h; closed form, recomputed)',
  scenario: `
buildweek: 1
name: the hare as a queue
simulate: { weeks: 60, ignored weeks: 80, replications: 60, seed: F02 }
stations:
  station:${HARE}
routes:
  process: # the squared coefficient of variation is 0.05
    - make: { on: station, takes: "gamma mean 15 min, variation 0.2236067977" }
parts:
  part: { route: process }
demand:
  part: { jobs: 2.875 per hour, when: any time }
`,
  values: [
    {
      what: 'utilization',
      truth: 0.9583333333,
      kind: 'share',
      estimate: rest(stationShare('station', 'idle')),
    },
    { what: 'wait, hours', truth: 27.79166667, kind: 'mean', estimate: meanWait('station'), sharpness: 0.1 },
    { what: 'queue', truth: 79.90104167, kind: 'mean', estimate: queueLength('station'), sharpness: 0.1 },
  ],
};
