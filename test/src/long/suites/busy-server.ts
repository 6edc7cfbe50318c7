import type { StudySuite } from '../intervals/study-suite.ts';

/**
 * One server at a load of 0.8 with service of 12 min (M/M/1). In the long run lead times are exponential with mean
 * 12 min / (1 − 0.8) = 1 h. Source: Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th edition,
 * chapter 2 (from memory).
 *
 * The start is in equilibrium but for exp(−9): the ignored week is 9.4 times the relaxation time
 * 12 min / (1 − √0.8)² = 17.9 h. The measured time of a study, 39 times 5 weeks or 131,000 jobs, is long enough for the
 * intervals to reach their level: with the same queue played by its recursion alone, outside of this program, 8,000
 * such studies covered 0.948 of the time for either interval; with a quarter of it 0.938 and 0.944.
 *
 * With 39 replications the prediction holds the next with exactly 38/40.
 */
export const BUSY_SERVER: StudySuite = {
  name: 'busy-server',
  title:
    'One server at a load of 0.8, 39 replications of 5 weeks of 840 service times each, after an ignored week from empty',
  scenario: `
buildweek: 1
name: busy server
simulate: { weeks: 5, ignored weeks: 1, weeks to finish: 1, replications: 39, level: 95 % }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean 12 min }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 4 per hour, when: any time }
`,
  repetitions: 1000,
  truth: { meanLeadTime: 1, p95LeadTime: Math.log(20) },
};
