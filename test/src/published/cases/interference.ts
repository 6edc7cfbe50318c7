import {
  breakdownsPerHour,
  finishedPerHour,
  hoursDownPerBreakdown,
  machinesIn,
  peopleShare,
  stationsIn,
  times,
} from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/** Machines that wait for people. */

/** 4 ignored weeks are 672 h, above twenty times the time between failures of a machine. */
export const REPAIRERS: PublishedCase = {
  title: 'Q13: five machines, two repairers',
  source:
    'Gross & Harris, section 2.7, example (from memory: P0 = 0.619, L = 0.465; machine interference, recomputed)',
  scenario: `
buildweek: 1
name: five machines and two repairers
simulate: { weeks: 74, ignored weeks: 4, replications: 60, seed: Q13 }
people:
  repairer: { count: 2, hours: always, skills: repair }
stations:
  machine:
    count: 5
    breaks down:
      every: about 30 h of running
      batch: goes on
      repair: { by: repair, takes: exponential mean 3 h }
routes:
  process: [make: { on: machine, takes: 5 h }]
parts:
  part: { route: process }
demand:
  part: { kept in the lab: 5 jobs }
`,
  values: [
    { what: 'machines down', truth: 0.4647943956, kind: 'mean', estimate: stationsIn('down') },
    { what: 'machines at work', truth: 4.535205604, kind: 'mean', estimate: stationsIn('run') },
    { what: 'failures per hour', truth: 0.1511735201, kind: 'mean', estimate: breakdownsPerHour },
    { what: 'hours down', truth: 3.074575462, kind: 'mean', estimate: hoursDownPerBreakdown },
    // Both are idle when no machine is down, one of them when one is.
    {
      what: 'idle repairers',
      truth: 0.6185917758 + 0.3092958879 / 2,
      kind: 'share',
      estimate: peopleShare('repairer', 'idle'),
    },
  ],
};

const INTERFERENCE =
  'Palm 1943, Ashcroft 1950: machine interference, insensitive to the law of print times (B. D. Bunday and R. E. Scraton 1980; recomputed)';

/** 5 ignored weeks are 840 h, 76 cycles of print and set-up. */
function technicians(
  name: string,
  count: number,
  weeks: number,
  times: { readonly print: string; readonly setUp: string },
): string {
  return `
buildweek: 1
name: ${name}
simulate: { weeks: ${weeks}, ignored weeks: 5, replications: 60, seed: ${name} }
people:
  technician: { count: ${count}, hours: always, skills: run machines }
machines:
  printer:
    count: 8
    set-up: { takes: ${times.setUp}, may pause: yes }
routes:
  process: [build: { on: printer }]
parts:
  part: { route: process, fits: 1 per build, print: ${times.print} per build }
demand: # always a job that waits
  part: { kept in the lab: 20 jobs }
`;
}

const RANDOM = { print: 'exponential mean 10 h', setUp: 'exponential mean 1 h' };

/** @param print the time of a print, of any law with a mean of 10 h */
function loneTechnician(print: string): PublishedCase {
  return {
    title: `Q14: eight machines, one technician; a print takes ${print}`,
    source: INTERFERENCE,
    scenario: technicians(`Q14 one ${print}`, 1, 45, { ...RANDOM, print }),
    values: [
      { what: 'builds per hour', truth: 0.6616815671, kind: 'mean', estimate: finishedPerHour },
      { what: 'machines printing', truth: 6.616815671, kind: 'mean', estimate: machinesIn('print') },
      {
        what: 'utilization of the technician',
        truth: 0.6616815671,
        kind: 'share',
        estimate: peopleShare('technician', 'work'),
      },
      // By Little's law: builds per hour times the mean wait of 1.09040783 h.
      {
        what: 'machines that wait for the technician',
        truth: 0.6616815671 * 1.09040783,
        kind: 'mean',
        estimate: machinesIn('waiting to start'),
      },
    ],
  };
}

export const LONE_TECHNICIAN = loneTechnician(RANDOM.print);

export const TECHNICIANS: readonly PublishedCase[] = [
  LONE_TECHNICIAN,
  loneTechnician('10 h'),
  {
    title: 'Q14: eight machines, two technicians',
    source: INTERFERENCE,
    scenario: technicians('Q14 two', 2, 125, RANDOM),
    values: [
      { what: 'builds per hour', truth: 0.7214005559, kind: 'mean', estimate: finishedPerHour },
      {
        what: 'utilization of each',
        truth: 0.360700278,
        kind: 'share',
        estimate: peopleShare('technician', 'work'),
      },
      {
        what: 'machines that wait for a technician',
        truth: 0.7214005559 * 0.08953955529,
        kind: 'mean',
        estimate: machinesIn('waiting to start'),
      },
    ],
  },
];

/** All times constant: once in step, nobody waits, 8 builds in 11 h. */
export const IN_STEP = technicians('Q14 in step', 1, 25, { print: '10 h', setUp: '1 h' });

/**
 * Maintenance waits until a build ends, so that every 100 h of running would come to 104 h with builds of 8 h; 2 % of
 * the running time is kept by 1.92 h every 96 h.
 *
 * @param fails what makes the time between failures pass
 * @param hours of a machine that an hour of print takes, printing included
 */
function capacity(name: string, fails: string, hours: number, source: string): PublishedCase {
  return {
    title: `F13: capacity with maintenance and breakdowns ${name}`,
    source,
    scenario: `
buildweek: 1
name: capacity with breakdowns ${name}
simulate: { weeks: 60, ignored weeks: 4, replications: 60, seed: F13 ${name} }
machines:
  printer:
    count: 3
    breaks down:
      every: about 93 h ${fails}
      build: goes on
      service: { response: 0 min, takes: exponential mean 7 h }
    maintenance: { every: 96 h of running, takes: 1.92 h, attended: no }
    noticed: monitored
routes:
  process: [build: { on: printer }]
parts:
  part: { route: process, fits: 1 per build, print: 8 h per build }
demand:
  part: { kept in the lab: 6 jobs }
`,
    values: [
      {
        what: 'printing hours of a machine in a week',
        truth: 168 / hours,
        kind: 'mean',
        estimate: times(machinesIn('print'), 168 / 3),
      },
      {
        what: 'builds per week',
        truth: (3 * 168) / 8 / hours,
        kind: 'mean',
        estimate: times(finishedPerHour, 168),
      },
    ],
  };
}

export const CAPACITIES: readonly PublishedCase[] = [
  capacity(
    'by the clock',
    'by the clock',
    1.02 / 0.93,
    'Definition: 168 · 0.93 / 1.02 h a week (closed form)',
  ),
  capacity(
    'by running hours',
    'of running',
    1 + 7 / 93 + 0.02,
    'Definition, for breakdowns that only come while it runs: each running hour costs 7/93 h of repair (closed form)',
  ),
];
