import { rounded } from '../rounded.ts';
import { meanLeadTime, type Tandem } from './erlang-tandem.ts';

const HOURS_PER_WEEK = 168;

/** Jobs an hour, and mean service times in hours, at both stations. */
const ARRIVAL_RATE = 1.5;
const SERVICE = [1.7, 2.1] as const;
/** What a server costs at either station, in any currency. */
export const PRICES = [3, 4] as const;

/** Weeks of a replication: those that are measured, after one that is not. */
export const WEEKS = 2;
export const IGNORED_WEEKS = 1;
/** Jobs that arrive in the measured weeks, in the long run. */
export const JOBS = WEEKS * ARRIVAL_RATE * HOURS_PER_WEEK;

/** One number of servers at each station. */
export interface TandemPlan {
  readonly name: string;
  readonly servers: readonly [number, number];
  readonly cost: number;
}

/** All plans that may be chosen, the cheapest first; none of equal cost. */
export const PLANS: readonly TandemPlan[] = [4, 5]
  .flatMap((first) => [4, 5, 6].map((second) => [first, second] as const))
  .map((servers) => ({
    name: servers.join('+'),
    servers,
    cost: PRICES[0] * servers[0] + PRICES[1] * servers[1],
  }))
  .sort((one, other) => one.cost - other.cost);

/** The plan that is right, and the next cheaper one, which is wrong by as little as counts. */
export const RIGHT = PLANS.findIndex(({ name }) => name === '4+5');
export const RIVAL = PLANS.findIndex(({ name }) => name === '5+4');

export function tandemOf(plan: number): Tandem {
  const servers = PLANS[plan]?.servers;
  if (servers === undefined) throw new RangeError(`There is no plan ${plan}.`);
  return { arrivalRate: ARRIVAL_RATE, service: SERVICE, servers };
}

/** The middle between the truths of the two plans, and how far either lies from it. */
export interface Boundary {
  readonly target: number;
  readonly tolerance: number;
}

function between(right: number, rival: number): Boundary {
  return { target: rounded((right + rival) / 2), tolerance: rounded((rival - right) / 2) };
}

/**
 * Hours within which 95 % of the jobs have to be done: where the shares of the two plans lie equally far from that. The
 * exact solution takes a second, so that it stands here as a number and is solved again in the test.
 */
export const WITHIN_HOURS = 11.014;

/** Hours of the mean lead time that are allowed. */
export const MEAN = between(meanLeadTime(tandemOf(RIGHT)), meanLeadTime(tandemOf(RIVAL)));
/** Share of jobs that may take longer than `WITHIN_HOURS`: 5 %, a p95 of at most so many hours. Numbers as there. */
export const LATE: Boundary = { target: 0.0500003, tolerance: 0.0165525 };

/** The scenario of a plan. */
export function scenarioOf(plan: number): string {
  const { servers } = tandemOf(plan);
  return scenarioWith(`count: ${servers[0]}`, `count: ${servers[1]}`);
}

/** The scenario with its two stations in these words. */
export function scenarioWith(first: string, second: string): string {
  return `
buildweek: 1
name: two stations in a row
simulate: { weeks: ${WEEKS}, ignored weeks: ${IGNORED_WEEKS}, weeks to finish: 1, replications: 20, level: 95 % }
stations:
  first: { ${first} }
  second: { ${second} }
routes:
  visit:
    - serve: { on: first, takes: exponential mean ${SERVICE[0]} h }
    - serve again: { on: second, takes: exponential mean ${SERVICE[1]} h }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: ${ARRIVAL_RATE} per hour, when: any time }
`;
}
