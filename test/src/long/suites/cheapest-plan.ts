import { cheapestFeasible } from '@buildweek/statistics';
import { JOBS, LATE, MEAN, PLANS, scenarioOf, WITHIN_HOURS } from '../selection/problem.ts';
import { type Selection, selectionSuite } from '../selection/selection-suite.ts';
import { readPlans, Weeks } from '../selection/weeks.ts';
import type { Suite } from '../suite.ts';

/** How the cheapest plan is sought. A value of a replication is the surplus of all its jobs together. */
const SEARCH = {
  candidates: PLANS.length,
  tolerances: [JOBS * MEAN.tolerance, JOBS * LATE.tolerance],
  alpha: 0.05,
  firstStage: { met: 20, missed: 10 },
  batch: 10,
  most: 2000,
};

const SELECTION: Selection = {
  name: 'cheapest-plan',
  title:
    'The cheapest of six plans for two stations in a row that keeps a mean and a p95, the next cheaper one a tolerance away: as many replications of 2 weeks or 504 jobs as it takes, after an ignored week from empty',
  repetitions: 1000,
  played: [PLANS.map((_, plan) => scenarioOf(plan)), MEAN, LATE, WITHIN_HOURS, SEARCH],
  createProcedure: () => {
    const plans = readPlans();
    return async (seed) => {
      const weeks = new Weeks(plans, seed);
      const { chosen, looked } = await cheapestFeasible(SEARCH, async (plan, from, to) =>
        (await weeks.play(plan, from, to)).map(({ hours, late, jobs }) => [
          MEAN.target * jobs - hours,
          LATE.target * jobs - late,
        ]),
      );
      return { chosen, replications: PLANS.map((_, plan) => looked[plan]?.replications ?? 0) };
    };
  },
};

/**
 * The search for the cheapest plan as a whole. The right plan keeps both targets by exactly one tolerance, its rival
 * misses both by as much (`problem.ts`; exact answers in `erlang-tandem.ts` and `lead-time-law.ts`).
 *
 * The ignored week is 16 times the relaxation time of the stations of the right plan (10.5 h and 9.9 h) and 4 times that
 * of the second station of its rival (41 h), which is left with e^−4 of the distance from empty: over the measured
 * weeks that lowers its mean by less than 0.01 h, a fortieth of the tolerance, and makes it a little harder to refuse.
 */
export const CHEAPEST_PLAN: Suite = selectionSuite(SELECTION);
