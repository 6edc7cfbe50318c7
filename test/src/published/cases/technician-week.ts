import { jobsInHour, jobsInLab, meanLeadTime } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/** Jobs that arrive in an hour, on average. */
const RATE = 0.19;
const MONDAY_7 = 7;
const FRIDAY_16 = 4 * 24 + 16;

/**
 * One technician who is there forty hours a week, work that may pause and arrives day and night. The relaxation time
 * is 1 / (1 − √0.798)² = 88 working hours, 2.2 weeks; 26 ignored weeks are twelve times that.
 *
 * The number in the lab is published for the instants at which the shift begins and ends. In the hours before and
 * after nobody works, so it grows by the rate of arrivals, and the mean of such an hour is half of that away.
 */
export const TECHNICIAN_WEEK: PublishedCase = {
  title: 'Q32: one technician over a week (periodic M/M/1)',
  source: 'Time-inhomogeneous Markov chain in its periodic steady state (numerically exact)',
  scenario: `
buildweek: 1
name: one technician over a week
simulate: { weeks: 500, ignored weeks: 26, replications: 270, seed: Q32 }
people:
  technician: { hours: { mon-fri: 08:00-16:00 }, skills: repair }
routes:
  visit:
    - repair: { by: repair, takes: exponential mean 1 h, may pause: yes }
parts:
  device: { route: visit }
demand:
  device: { jobs: ${RATE} per hour, when: any time }
`,
  values: [
    { what: 'L', truth: 6.7687330373, kind: 'mean', estimate: jobsInLab },
    { what: 'mean lead time, hours', truth: 35.6249107228, kind: 'mean', estimate: meanLeadTime },
    {
      what: 'number in the lab, Monday 07:00 to 08:00',
      truth: 13.8590121698 - RATE / 2,
      kind: 'mean',
      estimate: jobsInHour(MONDAY_7),
    },
    {
      what: 'number in the lab, Friday 16:00 to 17:00',
      truth: 1.6990121697 + RATE / 2,
      kind: 'mean',
      estimate: jobsInHour(FRIDAY_16),
    },
  ],
};
