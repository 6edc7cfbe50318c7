import { leadTime, stationShare, wait } from '../measures.ts';
import { head, type TheoryCase } from '../theory-case.ts';

/** An oven for five jobs: 1.5 jobs an hour, 2 h a batch. */
function oven(name: string, weeks: number, start: string, takes: string): string {
  return `${head(name, weeks, 4)}stations: { oven: { holds: 5 jobs, start: ${start} } }
routes: { visit: [bake: { on: oven, takes: ${takes} }] }
parts: { job: { route: visit } }
demand: { job: { jobs: 1.5 per hour, when: any time } }
`;
}

export const BATCHES: readonly TheoryCase[] = [
  {
    name: 'M/M(1,5)/1: a batch of whatever waits, up to five',
    source: 'Bailey 1954, Neuts 1967: root of a polynomial (closed form)',
    scenario: oven('up to five', 32, 'at once', 'exponential mean 2 h'),
    values: [
      { what: 'mean wait', unit: 'hours', theory: 3.1815165375, read: wait('oven') },
      { what: 'mean lead time', unit: 'hours', theory: 5.1815165375, read: leadTime() },
    ],
  },
  {
    name: 'M/M[5]/1: only full batches of five',
    source: 'Gross and Harris, section 3.2 (from memory): the same as E5/M/1 (closed form)',
    scenario: oven('full batches', 20, 'when full', 'exponential mean 2 h'),
    // 4/3 h until the batch is full, then 1.3572182986 h in the queue of batches, then 2 h.
    values: [{ what: 'mean lead time', unit: 'hours', theory: 4.6905516319, read: leadTime() }],
  },
  {
    name: 'M/M(3,5)/1: a batch starts with three and takes up to five',
    source: 'Neuts 1967; Chaudhry and Templeton 1983 (chain of 1500 states, numerically exact)',
    scenario: oven('three to five', 36, 'when 60 % full', 'exponential mean 2 h'),
    values: [
      { what: 'mean wait', unit: 'hours', theory: 2.785741477, read: wait('oven') },
      { what: 'oven busy', unit: 'share', theory: 0.7714430465, read: stationShare('oven', 'run') },
    ],
  },
  {
    name: 'M/D(1,5)/1: constant batches',
    source: 'Bailey 1954, Downton 1955: embedded chain (numerically exact)',
    scenario: oven('constant batches', 6, 'at once', '2 h'),
    values: [{ what: 'mean wait', unit: 'hours', theory: 1.1156781001, read: wait('oven') }],
  },
];
