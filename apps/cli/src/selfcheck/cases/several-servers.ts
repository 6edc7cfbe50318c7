import { jobsInLab, leadTime, leadTimePercentile, queueLength, wait } from '../measures.ts';
import { head, type TheoryCase } from '../theory-case.ts';

/** Several servers, priorities, people who give up. */
export const SEVERAL_SERVERS: readonly TheoryCase[] = [
  {
    name: 'M/M/5: five servers',
    source: 'Erlang C (closed form); lead time: wait and time are both exponential',
    scenario: `${head('M/M/5', 14, 2)}stations: { server: { count: 5 } }
routes: { visit: [serve: { on: server, takes: exponential mean 1 h }] }
parts: { job: { route: visit } }
demand: { job: { jobs: 4 per hour, when: any time } }
`,
    values: [
      { what: 'mean lead time', unit: 'hours', theory: 1.5541125541, read: leadTime() },
      {
        what: '95 % of lead times within',
        unit: 'hours',
        theory: 4.1974625784,
        read: leadTimePercentile(0.95),
      },
    ],
  },
  {
    name: 'M/D/2: two servers, constant times',
    source: 'Crommelin 1932 (embedded chain, numerically exact)',
    scenario: `${head('M/D/2', 50, 4)}stations: { server: { count: 2 } }
routes: { visit: [serve: { on: server, takes: 1 h }] }
parts: { job: { route: visit } }
demand: { job: { jobs: 1.6 per hour, when: any time } }
`,
    values: [{ what: 'mean wait', unit: 'hours', theory: 0.9032838793, read: wait('server') }],
  },
  {
    name: 'M/G/∞: nobody waits for anybody',
    source: 'Gross and Harris (from memory; closed form, whatever the law of the time)',
    scenario: `${head('M/G/inf', 2, 1)}routes: { visit: [dry: { wait: "lognormal mean 4 h, variation 1" }] }
parts: { job: { route: visit } }
demand: { job: { jobs: 2.5 per hour, when: any time } }
`,
    values: [{ what: 'jobs in the lab', unit: 'jobs', theory: 10, read: jobsInLab }],
  },
  {
    name: 'M/G/1 with three priorities',
    source: 'Cobham 1954 (closed form): waits of 1, 2 and 8 h, times of 1, 1 and 1.5 h',
    // Rush goes first, then the earliest promise: those of the second always come before those of the third.
    scenario: `${head('three priorities', 120, 10)}stations: { server: {} }
routes: { visit: [serve: { on: server, takes: 1 h }] }
parts:
  first: { route: visit, times: { serve: exponential mean 1 h } }
  second: { route: visit, times: { serve: 1 h } }
  third: { route: visit, times: { serve: exponential mean 1.5 h } }
demand:
  first: { jobs: 0.2 per hour, when: any time, rush: 100 % }
  second: { jobs: 0.3 per hour, when: any time, promise: 1 h }
  third: { jobs: 0.2 per hour, when: any time }
`,
    values: [
      { what: 'mean lead time, first', unit: 'hours', theory: 2, read: leadTime('first') },
      { what: 'mean lead time, second', unit: 'hours', theory: 3, read: leadTime('second') },
      { what: 'mean lead time, third', unit: 'hours', theory: 9.5, read: leadTime('third') },
    ],
  },
  {
    name: 'M/M/3 with two priorities',
    source: 'Cobham 1954, several servers (closed form): waits of 0.27108 and 1.01655 h, times of 1 h',
    scenario: `${head('two priorities', 30, 3)}stations: { server: { count: 3 } }
routes: { visit: [serve: { on: server, takes: exponential mean 1 h }] }
parts: { first: { route: visit }, second: { route: visit } }
demand:
  first: { jobs: 1 per hour, when: any time, rush: 100 % }
  second: { jobs: 1.2 per hour, when: any time }
`,
    values: [
      { what: 'mean lead time, first', unit: 'hours', theory: 1.2710794297, read: leadTime('first') },
      { what: 'mean lead time, second', unit: 'hours', theory: 2.0165478615, read: leadTime('second') },
    ],
  },
  {
    name: 'M/G/1 in which rush interrupts',
    source:
      'White and Christie 1958; Gross and Harris, section 3.4 (from memory; closed form): 1 / (1 - 0.2) h for rush, and time / 0.8 + 0.8 / (0.8 x 0.2) h for others',
    scenario: `${head('rush interrupts', 125, 10)}people: { server: { hours: always, skills: serve } }
routes: { visit: [serve: { by: serve, takes: 1 h, may pause: yes }] }
parts:
  first: { route: visit, times: { serve: exponential mean 1 h } }
  second: { route: visit, times: { serve: 1 h } }
  third: { route: visit, times: { serve: exponential mean 1.5 h } }
demand:
  first: { jobs: 0.2 per hour, when: any time, rush: 100 % }
  second: { jobs: 0.3 per hour, when: any time }
  third: { jobs: 0.2 per hour, when: any time }
dispatch: { rush interrupts: yes }
`,
    values: [
      { what: 'mean lead time, rush', unit: 'hours', theory: 1.25, read: leadTime('first') },
      { what: 'mean lead time, second', unit: 'hours', theory: 6.25, read: leadTime('second') },
      { what: 'mean lead time, third', unit: 'hours', theory: 6.875, read: leadTime('third') },
    ],
  },
  {
    name: 'M/M/5+M: requesters who wait too long withdraw',
    source: 'Palm 1957 (numerical)',
    scenario: `${head('withdrawals', 8, 2)}stations: { server: { count: 5 } }
routes: { visit: [serve: { on: server, takes: exponential mean 1 h }] }
parts: { job: { route: visit } }
demand:
  job:
    jobs: 5 per hour
    when: any time
    cancels: { chance: 100 %, after: exponential mean 2 h, only before start: yes }
`,
    values: [{ what: 'jobs waiting', unit: 'jobs', theory: 1.4613157084, read: queueLength('server') }],
  },
];
