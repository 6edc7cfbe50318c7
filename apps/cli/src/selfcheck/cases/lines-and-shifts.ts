import { jobsInLab, leadTime, leadTimePercentile, queueLength, wait } from '../measures.ts';
import { head, type TheoryCase } from '../theory-case.ts';

/** Several stages in a row, a fixed number of jobs in the lab, and people who go home. */
export const LINES_AND_SHIFTS: readonly TheoryCase[] = [
  {
    name: 'M/M/1 to M/M/1: two servers in a row',
    source: 'Burke 1956, Reich 1957: the times at the two are independent and exponential (closed form)',
    scenario: `${head('two in a row', 70, 10)}stations: { first: {}, second: {} }
routes:
  visit:
    - serve: { on: first, takes: exponential mean 1 h }
    - serve again: { on: second, takes: exponential mean 0.8 h }
parts: { job: { route: visit } }
demand: { job: { jobs: 0.8 per hour, when: any time } }
`,
    values: [
      { what: 'mean lead time', unit: 'hours', theory: 7.2222222222, read: leadTime() },
      {
        what: '95 % of lead times within',
        unit: 'hours',
        theory: 17.8921689475,
        read: leadTimePercentile(0.95),
      },
      { what: 'jobs waiting at the second', unit: 'jobs', theory: 1.1377777778, read: queueLength('second') },
    ],
  },
  {
    name: 'Closed line of four equal stations, four jobs',
    source: 'Reiser and Lavenberg 1980: mean value analysis (exact)',
    scenario: `${head('closed line', 6, 2)}stations: { first: {}, second: {}, third: {}, fourth: {} }
routes:
  visit:
    - one: { on: first, takes: exponential mean 2 h }
    - two: { on: second, takes: exponential mean 2 h }
    - three: { on: third, takes: exponential mean 2 h }
    - four: { on: fourth, takes: exponential mean 2 h }
parts: { job: { route: visit } }
demand: { job: { kept in the lab: 4 jobs } }
`,
    values: [{ what: 'mean lead time', unit: 'hours', theory: 14, read: leadTime() }],
  },
  {
    name: 'Closed line of three unequal stations, six jobs',
    source: 'Reiser and Lavenberg 1980: mean value analysis (exact)',
    scenario: `${head('unequal closed line', 6, 2)}stations: { first: {}, second: {}, third: {} }
routes:
  visit:
    - one: { on: first, takes: exponential mean 1 h }
    - two: { on: second, takes: exponential mean 3 h }
    - three: { on: third, takes: exponential mean 2 h }
parts: { job: { route: visit } }
demand: { job: { kept in the lab: 6 jobs } }
`,
    values: [{ what: 'mean lead time', unit: 'hours', theory: 18.7888198758, read: leadTime() }],
  },
  {
    name: 'Wait for the shift: eight hours of every day',
    source: 'elementary: the wait is uniform on 0 to 16 h for two of three jobs (closed form)',
    scenario: `${head('daily shift', 3, 1)}hours: { day: { daily: "08:00-16:00" } }
people: { technicians: { count: 50, hours: day, skills: sign } }
routes: { visit: [sign: { by: sign, takes: 0 min }] }
parts: { job: { route: visit } }
demand: { job: { jobs: 1 per hour, when: any time } }
`,
    values: [
      { what: 'mean wait', unit: 'hours', theory: 5.3333333333, read: wait('sign') },
      { what: '90 % of lead times within', unit: 'hours', theory: 13.6, read: leadTimePercentile(0.9) },
    ],
  },
  {
    name: 'Wait for the shift: Monday to Friday',
    source: 'elementary: four gaps of 16 h and one of 64 h (closed form)',
    scenario: `${head('weekly shift', 3, 1)}hours: { day: { mon-fri: "08:00-16:00" } }
people: { technicians: { count: 50, hours: day, skills: sign } }
routes: { visit: [sign: { by: sign, takes: 0 min }] }
parts: { job: { route: visit } }
demand: { job: { jobs: 1 per hour, when: any time } }
`,
    values: [
      { what: 'mean wait', unit: 'hours', theory: 15.2380952381, read: wait('sign') },
      { what: '95 % of lead times within', unit: 'hours', theory: 55.6, read: leadTimePercentile(0.95) },
    ],
  },
  {
    name: 'Start by day, print 20 h, unload by day',
    source: 'elementary (closed form)',
    scenario: `${head('print of 20 h', 8, 1)}hours: { day: { daily: "08:00-16:00" } }
people: { technicians: { count: 100, hours: day, skills: run machines } }
machines: { printer: { count: 100, set-up: 0 min, unload: 0 min } }
routes: { visit: [print: { on: printer }] }
parts: { job: { route: visit, fits: 1 per build, print: 20 h per build } }
demand: { job: { jobs: 40 per week, when: any time } }
`,
    values: [
      { what: 'mean lead time', unit: 'hours', theory: 28.3333333333, read: leadTime() },
      { what: '90 % of lead times within', unit: 'hours', theory: 37.6, read: leadTimePercentile(0.9) },
    ],
  },
  {
    name: 'One technician over a week, work comes day and night',
    source: 'time-dependent Markov chain, periodic (numerically exact)',
    scenario: `${head('one technician', 150, 20)}hours: { day: { mon-fri: "08:00-16:00" } }
people: { technician: { hours: day, skills: repair } }
routes: { visit: [repair: { by: repair, takes: exponential mean 1 h, may pause: yes }] }
parts: { job: { route: visit } }
demand: { job: { jobs: 0.19 per hour, when: any time } }
`,
    values: [
      { what: 'jobs in the lab', unit: 'jobs', theory: 6.7687330373, read: jobsInLab },
      { what: 'mean lead time', unit: 'hours', theory: 35.6249107228, read: leadTime() },
    ],
  },
];
