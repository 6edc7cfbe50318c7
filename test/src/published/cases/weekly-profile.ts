import type { Estimate } from '@buildweek/results';
import { moments, pooledDeviationInterval } from '@buildweek/statistics';
import { ratioOver } from '../measures.ts';
import type { Played } from '../play.ts';
import type { PublishedCase } from '../published-case.ts';

const WEEKS = 160;

/** Arrivals from an hour of the day to another, for each of the five days of work of each week. */
function countsOf(arrivals: Float64Array, fromHour: number, toHour: number): Float64Array {
  const counts = new Float64Array(5 * WEEKS);
  for (const hour of arrivals) {
    const day = Math.floor((hour % 168) / 24);
    if (day >= 5 || hour % 24 < fromHour || hour % 24 >= toHour) continue;
    const position = Math.floor(hour / 168) * 5 + day;
    counts[position] = (counts[position] ?? 0) + 1;
  }
  return counts;
}

/** Share of the days of work on which the number of arrivals between two hours is as wanted. */
function shareOfDays(
  fromHour: number,
  toHour: number,
  isWanted: (count: number) => boolean,
): (played: Played) => Estimate {
  return ({ arrivals }) =>
    ratioOver(
      arrivals.map((each) => countsOf(each, fromHour, toHour).filter(isWanted).length),
      arrivals.map(() => 5 * WEEKS),
    );
}

/** Published for Mondays; all days of work are alike, so that each of them tells as much. */
export const WEEKLY_PROFILE: PublishedCase = {
  title: 'S23: arrivals by a weekly profile',
  source: 'P. A. W. Lewis and G. S. Shedler 1979; elementary (closed form)',
  scenario: `
buildweek: 1
name: weekly profile
simulate: { weeks: ${WEEKS}, ignored weeks: 0, replications: 60, seed: S23 }
routes:
  visit: [rest: { wait: 1 min }]
parts:
  job: { route: visit }
demand:
  job:
    jobs: 56.4 per week
    when:
      mon-fri 00:00-08:00: 0.05
      mon-fri 08:00-12:00: 1.5
      mon-fri 12:00-16:00: 1
      mon-fri 16:00-24:00: 0.05
      sat-sun 00:00-24:00: 0.05
`,
  traced: true,
  values: [
    {
      what: 'arrivals in a week',
      truth: 56.4,
      kind: 'mean',
      estimate: ({ arrivals }) =>
        ratioOver(
          arrivals.map((each) => each.length),
          arrivals.map(() => WEEKS),
        ),
    },
    {
      what: 'no arrival from 08:00 to 09:00',
      truth: 0.2231301601,
      kind: 'share',
      estimate: shareOfDays(8, 9, (count) => count === 0),
    },
    {
      what: 'three or more from 11:00 to 13:00',
      truth: 0.4561868841,
      kind: 'share',
      estimate: shareOfDays(11, 13, (count) => count >= 3),
    },
    {
      // The index of dispersion is 1: the variance is the mean of 4 · 1.5 + 4 · 1 + 16 · 0.05.
      what: 'deviation of the arrivals of a day',
      truth: Math.sqrt(10.8),
      kind: 'deviation',
      estimate: ({ arrivals }) => ({
        kind: 'estimate',
        replications: arrivals.length,
        ...pooledDeviationInterval(
          arrivals.map((each) => moments(countsOf(each, 0, 24))),
          0.95,
        ),
      }),
    },
  ],
};
