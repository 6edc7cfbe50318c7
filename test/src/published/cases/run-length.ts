import { normalDeviationInterval } from '@buildweek/statistics';
import type { PublishedCase } from '../published-case.ts';

const WEEKS = 10;

/**
 * How far the mean number in the lab over a stretch of time is off, by chance: its variance over time T is about
 * 24 / T at utilization 0.5. 1 ignored week is 168 h, 14 times the relaxation time 1 / (1 − √0.5)² = 12 h.
 */
export const RUN_LENGTH: PublishedCase = {
  title: 'T03: the number in the lab over ten weeks (M/M/1)',
  source:
    'W. Whitt, Planning queueing simulations, Management Science 35 (1989): 2ρ(1 + ρ) / (1 − ρ)⁴ (formula from memory, checked by an independent simulation)',
  scenario: `
buildweek: 1
name: ten weeks
simulate: { weeks: ${WEEKS}, ignored weeks: 1, replications: 1600, seed: T03 }
stations:
  server: {}
routes:
  visit: [serve: { on: server, takes: exponential mean 1 h }]
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.5 per hour, when: any time }
`,
  values: [
    {
      what: 'deviation of the mean number in the lab',
      truth: Math.sqrt(24 / (168 * WEEKS)),
      kind: 'deviation',
      estimate: ({ histories }) => {
        const numbers = histories.map(({ queues, windowStart, windowEnd }) => {
          const area = queues.find((queue) => queue.kind === 'all')?.area ?? Number.NaN;
          return area / (windowEnd - windowStart);
        });
        return {
          kind: 'estimate',
          replications: numbers.length,
          ...normalDeviationInterval(numbers, 0.95),
        };
      },
    },
  ],
};
