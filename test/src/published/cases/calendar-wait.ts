import {
  deviationOfLeadTime,
  leadTimePercentile,
  meanLeadTime,
  onTime,
  waitOfStep,
  waitsWithin,
} from '../measures.ts';
import type { PublishedCase, PublishedValue } from '../published-case.ts';

/** Waits that come from the calendar alone. Nothing is carried over: equilibrium holds from the first week on. */

const WAIT = 'Elementary: uniform arrivals and the gaps between shifts (closed form, hand-checked)';

/** Work that takes no time, for whoever is on duty. @param hours of the technician */
function handOver(name: string, hours: string): string {
  return `
buildweek: 1
name: ${name}
simulate: { weeks: 10, ignored weeks: 1, replications: 100, seed: ${name} }
people:
  technician: { hours: { ${hours} }, skills: hand over }
routes:
  visit:
    - hand over: { by: hand over, takes: 0 min }
parts:
  part: { route: visit }
demand:
  part: { jobs: 1 per hour, when: any time }
`;
}

export const DAILY_SHIFT: PublishedCase = {
  title: 'Q33: waiting for a shift of eight hours every day',
  source: WAIT,
  scenario: handOver('Q33 daily', 'daily: 08:00-16:00'),
  values: [
    { what: 'no wait', truth: 1 / 3, kind: 'share', estimate: waitsWithin('hand over', 0) },
    { what: 'mean wait, hours', truth: 16 / 3, kind: 'mean', estimate: meanLeadTime },
    { what: 'wait, 50 %', truth: 4, kind: 'percentile', estimate: leadTimePercentile(0.5) },
    { what: 'wait, 90 %', truth: 13.6, kind: 'percentile', estimate: leadTimePercentile(0.9) },
    { what: 'wait, 95 %', truth: 14.8, kind: 'percentile', estimate: leadTimePercentile(0.95) },
    { what: 'deviation of wait', truth: 16 / 3, kind: 'deviation', estimate: deviationOfLeadTime },
  ],
};

export const WEEKDAY_SHIFT: PublishedCase = {
  title: 'Q33: waiting for a shift of eight hours from Monday to Friday',
  source: WAIT,
  scenario: handOver('Q33 weekdays', 'mon-fri: 08:00-16:00'),
  values: [
    { what: 'no wait', truth: 40 / 168, kind: 'share', estimate: waitsWithin('hand over', 0) },
    { what: 'mean wait, hours', truth: 15.2380952381, kind: 'mean', estimate: meanLeadTime },
    { what: 'wait, 95 %', truth: 55.6, kind: 'percentile', estimate: leadTimePercentile(0.95) },
  ],
};

const PRINT =
  'Elementary, derived by hand: who comes off shift starts at 08:00 and is unloaded at 08:00 on the next day; on shift before 12:00 unloaded next 08:00, after 12:00 at once (closed form, confirmed by an independent simulation)';

/** A print of twenty hours that somebody has to start and to unload; machines and people are ample. */
export function printOverNight(promise: string): string {
  return `
buildweek: 1
name: print over night
simulate: { weeks: 10, ignored weeks: 1, replications: 100, seed: Q40 promise ${promise} }
people:
  technicians: { count: 5, hours: { daily: 08:00-16:00 }, skills: run machines }
machines:
  printer: { count: 60, set-up: 0 min, unload: 0 min }
routes:
  visit:
    - build: { on: printer }
parts:
  part: { route: visit, fits: 1 per build, print: 20 h per build }
demand:
  part: { jobs: 100 per week, when: any time, promise: ${promise} }
`;
}

function printCase(promise: string, ...values: readonly PublishedValue[]): PublishedCase {
  return {
    title: `Q40: a print over night between two shifts, promised in ${promise}`,
    source: PRINT,
    scenario: printOverNight(promise),
    values,
  };
}

export const PRINT_IN_20_HOURS = printCase(
  '20 h',
  { what: 'share without any wait', truth: 1 / 6, kind: 'share', estimate: onTime },
  {
    what: 'mean wait for set-up, hours',
    truth: 16 / 3,
    kind: 'mean',
    estimate: waitOfStep('part', 'build', 'set-up'),
  },
  {
    what: 'mean wait for unloading, hours',
    truth: 3,
    kind: 'mean',
    estimate: waitOfStep('part', 'build', 'unload'),
  },
  { what: 'mean lead time, hours', truth: 85 / 3, kind: 'mean', estimate: meanLeadTime },
  { what: 'lead time, 50 %', truth: 28, kind: 'percentile', estimate: leadTimePercentile(0.5) },
  { what: 'lead time, 90 %', truth: 37.6, kind: 'percentile', estimate: leadTimePercentile(0.9) },
  { what: 'lead time, 95 %', truth: 38.8, kind: 'percentile', estimate: leadTimePercentile(0.95) },
);

export const PRINT_IN_24_HOURS = printCase('24 h', {
  what: 'lead time within 24 h',
  truth: 1 / 3,
  kind: 'share',
  estimate: onTime,
});
