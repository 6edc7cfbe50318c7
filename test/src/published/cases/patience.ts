import { cancelledShare, jobsInLab, queueLength } from '../measures.ts';
import type { PublishedCase, PublishedValue } from '../published-case.ts';

/**
 * Customers who do not wait, or not for long. A requester who withdraws a millisecond after asking, unless the job
 * is started by then, is a customer who is lost when all servers are busy. 2 ignored weeks are 336 h, above a hundred
 * times the time in service.
 */

const ERLANG_B = 'Erlang B; insensitive to the law of the times, Sevastyanov 1957 (closed form, recomputed)';

function lossCase(
  title: string,
  servers: number,
  jobsPerHour: number,
  takes: string,
  ...values: readonly PublishedValue[]
): PublishedCase {
  return {
    title: `Q05: ${title}`,
    source: ERLANG_B,
    scenario: `
buildweek: 1
name: customers who do not wait
simulate: { weeks: 12, ignored weeks: 2, replications: 60, seed: "Q05 ${title}" }
stations:
  server: { count: ${servers} }
routes:
  visit:
    - serve: { on: server, takes: "${takes}" }
parts:
  customer: { route: visit }
demand:
  customer:
    jobs: ${jobsPerHour} per hour
    when: any time
    cancels: { chance: 100 %, after: 0.001 s, only before start: yes }
`,
    values,
  };
}

const lost = (truth: number): PublishedValue => ({
  what: 'share of lost customers',
  truth,
  kind: 'share',
  estimate: cancelledShare,
});

const busy: PublishedValue = { what: 'busy servers', truth: 2.669836957, kind: 'mean', estimate: jobsInLab };

export const LOSS_CASES: readonly PublishedCase[] = [
  lossCase('loss with exponential times (M/M/5/5)', 5, 3, 'exponential mean 1 h', lost(0.1100543478), busy),
  lossCase('loss with constant times (M/D/5/5)', 5, 3, '1 h', lost(0.1100543478), busy),
  lossCase(
    'loss with lognormal times (M/G/5/5)',
    5,
    3,
    'lognormal mean 1 h, variation 2',
    lost(0.1100543478),
    busy,
  ),
  lossCase('loss at ten servers (M/M/10/10)', 10, 7, 'exponential mean 1 h', lost(0.07874088297)),
  lossCase('loss at two servers (M/M/2/2)', 2, 1, 'exponential mean 1 h', lost(0.2)),
];

export const PATIENCE_MEAN_2: PublishedCase = {
  title: 'Q39: customers who give up (M/M/5+M)',
  source: 'Palm 1957 (recomputed)',
  scenario: `
buildweek: 1
name: customers who give up
simulate: { weeks: 12, ignored weeks: 2, replications: 60, seed: Q39 }
stations:
  server: { count: 5 }
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h }
parts:
  customer: { route: visit }
demand:
  customer:
    jobs: 5 per hour
    when: any time
    cancels: { chance: 100 %, after: exponential mean 2 h, only before start: yes }
`,
  values: [
    { what: 'Lq', truth: 1.4613157084, kind: 'mean', estimate: queueLength('server') },
    { what: 'share of those who give up', truth: 0.1461315708, kind: 'share', estimate: cancelledShare },
  ],
};
