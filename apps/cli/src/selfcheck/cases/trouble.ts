import { busyShare, leadTime, machineShare, stationShare } from '../measures.ts';
import { head, type TheoryCase } from '../theory-case.ts';

/** What breaks down, and people who look after machines. */
export const TROUBLE: readonly TheoryCase[] = [
  {
    name: 'M/M/1 that breaks down by the clock',
    source: 'White and Christie 1958 (closed form): 100 h between failures, 8 h of repair, idle or not',
    scenario: `${head('breaks down by the clock', 150, 10)}stations:
  printer:
    noticed: monitored
    breaks down:
      every: about 100 h by the clock
      service: { response: 0 h, takes: exponential mean 8 h }
      batch: goes on
routes: { visit: [print: { on: printer, takes: exponential mean 4 h }] }
parts: { job: { route: visit } }
demand: { job: { jobs: 0.12 per hour, when: any time } }
`,
    values: [
      { what: 'mean lead time', unit: 'hours', theory: 10.2005660145, read: leadTime() },
      { what: 'broken down', unit: 'share', theory: 0.0740740741, read: stationShare('printer', 'down') },
    ],
  },
  {
    name: 'M/M/1 that breaks down while it runs',
    source: 'Gaver 1962: time to completion, with Pollaczek and Khinchine (closed form)',
    scenario: `${head('breaks down while it runs', 65, 10)}stations:
  printer:
    noticed: monitored
    breaks down:
      every: about 10 h of running
      service: { response: 0 h, takes: exponential mean 2 h }
      batch: goes on
routes: { visit: [print: { on: printer, takes: exponential mean 1 h }] }
parts: { job: { route: visit } }
demand: { job: { jobs: 0.5 per hour, when: any time } }
`,
    values: [{ what: 'mean lead time', unit: 'hours', theory: 3.5, read: leadTime() }],
  },
  {
    name: 'M/M/2//5: two people repair five machines',
    source:
      'Gross and Harris, section 2.7 (from memory; closed form): 0.4647943956 of five machines are down on average',
    // The jobs take a minute each and change nothing: breakdowns go by the clock.
    scenario: `${head('two people repair five machines', 70, 4)}people: { repairers: { count: 2, hours: always, skills: repair } }
machines:
  printer:
    count: 5
    breaks down: { every: about 30 h by the clock, build: goes on, repair: { by: repair, takes: exponential mean 3 h } }
routes: { visit: [print: { on: printer }] }
parts: { job: { route: visit, fits: 1 per build, print: 1 min per build } }
demand: { job: { jobs: 7 per week, when: any time } }
`,
    values: [
      {
        what: 'first machine down',
        unit: 'share',
        theory: 0.0929588791,
        read: machineShare('printer', 'down'),
      },
      // 0.1511735201 failures an hour of 3 h each, for two.
      { what: 'people busy', unit: 'share', theory: 0.2267602802, read: busyShare('repairers') },
    ],
  },
  {
    name: 'M/M/1//8: one technician sets up eight machines',
    source: 'Palm 1943, Ashcroft 1950: machine interference (closed form)',
    // There is always a job waiting; a machine runs 10 h and is then set up for an hour.
    scenario: `${head('one technician, eight machines', 10, 2)}people: { technician: { hours: always, skills: run machines } }
machines: { printer: { count: 8, set-up: exponential mean 1 h } }
routes: { visit: [print: { on: printer }] }
parts: { job: { route: visit, fits: 1 per build, print: exponential mean 10 h per build } }
demand: { job: { kept in the lab: 16 jobs } }
`,
    values: [
      { what: 'technician busy', unit: 'share', theory: 0.6616815671, read: busyShare('technician') },
      // Little's law: 16 jobs over 0.6616815671 builds an hour.
      { what: 'mean lead time', unit: 'hours', theory: 24.18081566, read: leadTime() },
    ],
  },
];
