import type { Suite } from '../suite.ts';
import { meanDifference, readPlan } from '../values/mean-difference.ts';
import { valueSuite } from '../values/value-suite.ts';

/** One server (M/M/1): 1 job an hour. */
const scenario = (minutes: number): string => `
buildweek: 1
name: one server
simulate: { weeks: 2, ignored weeks: 1, weeks to finish: 1, replications: 30, level: 95 % }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean ${minutes} min }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 1 per hour, when: any time }
`;

/** Mean time in the system, hours. */
const meanLeadTime = (minutes: number): number => 1 / (60 / minutes - 1);

const SCENARIOS = [scenario(18), scenario(14.4)];
const PLAY = { weeks: 2, ignoredWeeks: 1, replications: 30 };
export const TRUE_DIFFERENCE = meanLeadTime(14.4) - meanLeadTime(18);

/**
 * The difference that a faster server makes, on common random numbers. In the long run mean lead times are
 * 1 / (service rate − arrival rate): Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th edition,
 * chapter 2 (from memory).
 *
 * The ignored week is 114 times the relaxation time of the slower server, 18 min / (1 − √0.3)² = 1.5 h: nothing is left
 * of the start.
 */
export const PAIRED_DIFFERENCE: Suite = valueSuite({
  name: 'paired-difference',
  title:
    'The difference of two servers at loads of 0.3 and 0.24, 30 replications of 2 weeks or 336 jobs each on common random numbers, after an ignored week from empty',
  what: 'the difference',
  repetitions: 1000,
  played: [SCENARIOS, PLAY],
  truth: TRUE_DIFFERENCE,
  createEstimator: () => {
    const plans = SCENARIOS.map(readPlan);
    return (seed) => meanDifference(plans, PLAY, seed);
  },
});
