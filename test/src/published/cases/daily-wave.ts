import type { Estimate } from '@buildweek/results';
import { meanOver } from '../measures.ts';
import type { Played } from '../play.ts';
import type { PublishedCase, PublishedValue } from '../published-case.ts';

/** Radians per hour. */
const SPEED = (2 * Math.PI) / 24;
const SPANS_PER_HOUR = 4;

/** `daily 06:00-06:15: 7.99`: the rate 5 + 3 sin(2πt / 24) per hour as its mean over each quarter of an hour. */
function wave(): string {
  const clock = (quarter: number): string => {
    const hour = Math.floor(quarter / SPANS_PER_HOUR);
    const minute = ((quarter % SPANS_PER_HOUR) * 60) / SPANS_PER_HOUR;
    return `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
  };
  const cosine = (quarter: number): number => Math.cos((SPEED * quarter) / SPANS_PER_HOUR);
  return Array.from({ length: 24 * SPANS_PER_HOUR }, (_, quarter) => {
    const rate = 5 + ((3 * SPANS_PER_HOUR) / SPEED) * (cosine(quarter) - cosine(quarter + 1));
    return `      daily ${clock(quarter)}-${clock(quarter + 1)}: ${rate.toFixed(6)}`;
  }).join('\n');
}

/** Mean number in the lab in some hours of the day (from 0 to 23), over all days of the week. */
function inHours(...hoursOfDay: readonly number[]): (played: Played) => Estimate {
  return ({ histories }) =>
    meanOver(
      histories.map(({ queues }) => {
        const hours = queues.find((queue) => queue.kind === 'all')?.byHourOfWeek ?? [];
        const inside = [...hours].filter((_, hour) => hoursOfDay.includes(hour % 24));
        return inside.reduce((sum, value) => sum + value, 0) / inside.length;
      }),
    );
}

/** The hours before and after an instant. Around its mean of 30 the number is a wave too, which makes this known. */
function around(hour: number, published: number): PublishedValue {
  return {
    what: `number in the lab around ${hour}:00`,
    truth: 30 + ((published - 30) * Math.sin(SPEED)) / SPEED,
    kind: 'mean',
    estimate: inHours((hour + 23) % 24, hour),
  };
}

/** Published: when the number is largest, hours after midnight (the rate is so at 6), and how large. */
const PEAK_AT = 6 + 3.834557561;
const PEAK = 39.6665269;

/** 1 ignored week is 168 h, 28 times the time in service. */
export const DAILY_WAVE: PublishedCase = {
  title: 'Q35: ample servers, a rate that swings over the day (Mt/M/∞)',
  source: 'S. G. Eick, W. A. Massey and W. Whitt, Management Science 39 (1993) (closed form, recomputed)',
  scenario: `
buildweek: 1
name: daily wave
simulate: { weeks: 5, ignored weeks: 1, replications: 100, seed: Q35 }
routes:
  visit:
    - rest: { wait: exponential mean 6 h }
parts:
  customer: { route: visit }
demand:
  customer:
    jobs: 5 per hour
    when:
${wave()}
`,
  values: [
    around(6, 35.1912079),
    around(0, 21.84566969),
    {
      what: 'number in the lab in the hour of its peak',
      truth: meanOfWave(9, 10),
      kind: 'mean',
      estimate: inHours(9),
    },
  ],
};

/** Mean of 30 + (PEAK − 30) cos(SPEED (t − PEAK_AT)). */
function meanOfWave(fromHour: number, toHour: number): number {
  const sine = (hour: number): number => Math.sin(SPEED * (hour - PEAK_AT));
  return 30 + ((PEAK - 30) * (sine(toHour) - sine(fromHour))) / (SPEED * (toHour - fromHour));
}
