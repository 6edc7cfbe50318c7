import type { StudySuite } from '../intervals/study-suite.ts';

/**
 * One server at a load of 0.5 with service of 1 h (M/M/1), played until a precision is reached. In the long run lead
 * times are exponential with mean 1 h / (1 − 0.5) = 2 h; source as for the busy server. The ignored week is 14 times
 * the relaxation time 1 h / (1 − √0.5)² = 11.7 h.
 *
 * @param precision as a scenario says it
 */
export function halfLoadedServer(name: string, precision: string): StudySuite {
  return {
    name,
    title: `One server at a load of 0.5, as many replications as ${precision} takes, 2 weeks of 168 service times each, after an ignored week from empty`,
    scenario: `
buildweek: 1
name: half loaded server
simulate: { weeks: 2, ignored weeks: 1, weeks to finish: 1, precision: ${precision}, at most: 1280, level: 95 % }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.5 per hour, when: any time }
`,
    repetitions: 1000,
    truth: { meanLeadTime: 2, p95LeadTime: 2 * Math.log(20) },
  };
}
