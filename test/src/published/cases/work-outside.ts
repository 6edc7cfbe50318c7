import type { Estimate } from '@buildweek/results';
import { jobsInLab, jobsWithin, meanLeadTime } from '../measures.ts';
import type { Played } from '../play.ts';
import type { PublishedCase } from '../published-case.ts';

/** Parts sent out in an hour, as the results tell them for a week. */
function partsBackPerHour({ results }: Played): Estimate {
  const all = results.sentOut.find(({ part }) => part === null);
  if (all === undefined) throw new Error('Nothing may be sent out.');
  const { value, low, high, ...rest } = all.partsPerWeek;
  return { ...rest, value: value / 168, low: low / 168, high: high / 168 };
}

/** A process that the lab does not own: every job goes out at once, as many of them at a time as there are. */
export const WORK_OUTSIDE: PublishedCase = {
  title: 'Q06: work that is always sent out (M/G/∞)',
  source: 'Gross & Harris, Fundamentals of Queueing Theory; Takács 1962 (closed form, recomputed)',
  scenario: `
buildweek: 1
name: Q06 outside
simulate: { weeks: 12, ignored weeks: 2, replications: 60, seed: Q06 outside }
machines:
  printer: { count: 0, holds: 1 part }
routes:
  printed:
    - build: { on: printer }
parts:
  customer: { route: printed, fits: 1 per build, print: 1 h per build }
sent out: { takes: "lognormal mean 4 h, variation 1", when: always }
demand:
  customer: { jobs: 2.5 per hour, when: any time }
`,
  traced: true,
  values: [
    { what: 'L', truth: 10, kind: 'mean', estimate: jobsInLab },
    { what: 'lead time, hours', truth: 4, kind: 'mean', estimate: meanLeadTime },
    { what: 'parts back in an hour', truth: 2.5, kind: 'mean', estimate: partsBackPerHour },
    { what: 'at most 15', truth: 0.9512595967, kind: 'share', estimate: jobsWithin(15) },
    // Five hours in 120,000: it happens about fourteen times in all that is played.
    { what: 'none', truth: 4.539992976e-5, kind: 'share', estimate: jobsWithin(0), sharpness: 0.4 },
  ],
};
