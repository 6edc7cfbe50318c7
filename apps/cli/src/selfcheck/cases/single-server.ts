import {
  jobsInLab,
  leadTime,
  leadTimeDeviation,
  leadTimePercentile,
  stationShare,
  wait,
} from '../measures.ts';
import { head, type TheoryCase } from '../theory-case.ts';

/** One server, arrivals and times as stated. */
function server(name: string, weeks: number, takes: string, arrivals: string): string {
  return `${head(name, weeks, 10)}stations: { server: {} }
routes: { visit: [serve: { on: server, takes: "${takes}" }] }
parts: { job: { route: visit } }
demand: { job: { ${arrivals} } }
`;
}

const OFTEN = 'jobs: 0.8 per hour, when: any time';

/** Single servers with a utilization of 0.8: relaxation takes some 90 h, 10 ignored weeks are 1680 h. */
export const SINGLE_SERVER: readonly TheoryCase[] = [
  {
    name: 'M/M/1: one server, random gaps and times',
    source:
      'Gross, Shortle, Thompson and Harris, Fundamentals of Queueing Theory, 4th edition, chapter 2 (formulas from memory; closed form)',
    scenario: server('M/M/1', 110, 'exponential mean 1 h', OFTEN),
    values: [
      { what: 'server busy', unit: 'share', theory: 0.8, read: stationShare('server', 'run') },
      { what: 'jobs in the lab', unit: 'jobs', theory: 4, read: jobsInLab },
      { what: 'mean wait', unit: 'hours', theory: 4, read: wait('server') },
      {
        what: '95 % of lead times within',
        unit: 'hours',
        theory: 14.97866137,
        read: leadTimePercentile(0.95),
      },
    ],
  },
  {
    name: 'M/G/1: lognormal times',
    source:
      'Pollaczek and Khinchine; deviation by the recurrence of Takács (Gross and Harris, section 5.1, from memory; closed form)',
    // A squared coefficient of variation of 1/2.
    scenario: server(
      'M/G/1',
      120,
      'lognormal mean 1.6 h, variation 0.70710678',
      'jobs: 0.5 per hour, when: any time',
    ),
    values: [
      { what: 'mean wait', unit: 'hours', theory: 4.8, read: wait('server') },
      { what: 'deviation of lead times', unit: 'hours', theory: 5.9866518188, read: leadTimeDeviation },
    ],
  },
  {
    name: 'M/D/1: constant times',
    source: 'Erlang 1909, Crommelin 1932 (closed form, series)',
    scenario: server('M/D/1', 60, '1 h', OFTEN),
    values: [
      { what: 'mean wait', unit: 'hours', theory: 2, read: wait('server') },
      // The 95 % point of the wait is 6.620324997 h, and the time is 1 h.
      {
        what: '95 % of lead times within',
        unit: 'hours',
        theory: 7.620324997,
        read: leadTimePercentile(0.95),
      },
    ],
  },
  {
    name: 'M/E2/1: times of two random phases',
    source: 'Pollaczek and Khinchine; percentile by phases, Neuts 1981 (numerically exact)',
    scenario: server('M/E2/1', 90, 'erlang 2, mean 1 h', OFTEN),
    values: [
      { what: 'mean wait', unit: 'hours', theory: 3, read: wait('server') },
      {
        what: '95 % of lead times within',
        unit: 'hours',
        theory: 11.3180378083,
        read: leadTimePercentile(0.95),
      },
    ],
  },
  {
    name: 'D/M/1: constant gaps',
    source: 'Kendall 1953; Gross and Harris, section 5.3 (from memory; root found to 1e-12)',
    scenario: server('D/M/1', 75, 'exponential mean 1 h', 'every: 1.25 h'),
    values: [
      { what: 'mean wait', unit: 'hours', theory: 1.6927308399, read: wait('server') },
      {
        what: '95 % of lead times within',
        unit: 'hours',
        theory: 8.0667006811,
        read: leadTimePercentile(0.95),
      },
    ],
  },
  {
    name: 'E2/M/1: gaps of two random phases',
    source: 'Kendall 1953; Gross and Harris, section 5.3 (from memory; root found to 1e-12)',
    scenario: server('E2/M/1', 105, 'exponential mean 1 h', 'every: "erlang 2, mean 1.25 h"'),
    values: [{ what: 'mean wait', unit: 'hours', theory: 2.843979767, read: wait('server') }],
  },
  {
    name: 'M[X]/M/1: several jobs arrive together',
    source: 'Gaver 1959; Gross and Harris, section 3.1 (from memory; closed form)',
    // Bursts of geometric size, three jobs on average; 0.6 jobs an hour.
    scenario: server(
      'M[X]/M/1',
      80,
      'exponential mean 1 h',
      'jobs: 0.6 per hour, when: any time, jobs at once: geometric mean 3',
    ),
    values: [{ what: 'mean lead time', unit: 'hours', theory: 7.5, read: leadTime() }],
  },
  {
    name: 'M/E3/1: a job is three pieces, one after the other',
    source: 'Pollaczek and Khinchine (closed form)',
    scenario: server(
      'three pieces',
      50,
      'exponential mean 1 h per part',
      'jobs: 0.2 per hour, when: any time, pieces: 3',
    ),
    values: [{ what: 'mean lead time', unit: 'hours', theory: 6, read: leadTime() }],
  },
  {
    name: 'M/M/1, the shortest job first',
    source: 'Phipps 1956 (numerical integral)',
    scenario: `${server('shortest first', 60, 'exponential mean 1 h per job', OFTEN)}dispatch: { within: shortest work }
`,
    values: [{ what: 'mean wait', unit: 'hours', theory: 1.8822186162, read: wait('server') }],
  },
  {
    name: 'M/M/1 with rework: 30 % go round again',
    source: 'Takács 1963; Jackson (closed form)',
    scenario: `${head('rework', 55, 10)}stations: { server: {} }
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h, rejects: 30 % back to serve }
parts: { job: { route: visit } }
demand: { job: { jobs: 0.5 per hour, when: any time } }
`,
    values: [
      { what: 'jobs in the lab', unit: 'jobs', theory: 2.5, read: jobsInLab },
      { what: 'mean lead time', unit: 'hours', theory: 5, read: leadTime() },
    ],
  },
];
