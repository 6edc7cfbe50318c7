import { kimNelson } from '@buildweek/statistics';
import { JOBS, LATE, PLANS, RIGHT, scenarioOf, WITHIN_HOURS } from '../selection/problem.ts';
import { type Selection, selectionSuite } from '../selection/selection-suite.ts';
import { readPlans, Weeks } from '../selection/weeks.ts';
import type { Suite } from '../suite.ts';

/** What may be spent, and how the best of the plans that cost no more is sought. */
const BUDGET = PLANS[RIGHT]?.cost ?? 0;
const AFFORDABLE = PLANS.filter(({ cost }) => cost <= BUDGET).length;
const CHOICE = {
  systems: AFFORDABLE,
  alpha: 0.05,
  // The best and the next best lie on either side of the boundary.
  tolerance: JOBS * 2 * LATE.tolerance,
  firstStage: 10,
  batch: 10,
  most: 2000,
};

const SELECTION: Selection = {
  name: 'best-plan',
  title:
    'The plan with the fewest late jobs within a budget, the next best a tolerance away, by the procedure of Kim and Nelson: as many replications of 2 weeks or 504 jobs as it takes, after an ignored week from empty',
  repetitions: 1000,
  played: [PLANS.map((_, plan) => scenarioOf(plan)), LATE, WITHIN_HOURS, BUDGET, CHOICE],
  createProcedure: () => {
    const plans = readPlans();
    return async (seed) => {
      const weeks = new Weeks(plans, seed);
      const { chosen, played } = await kimNelson(CHOICE, async (plan, from, to) =>
        (await weeks.play(plan, from, to)).map(({ late }) => late),
      );
      return { chosen, replications: PLANS.map((_, plan) => played[plan]?.replications ?? 0) };
    };
  },
};

/**
 * The choice of the best plan within a budget as a whole: of the three plans that cost at most 32 the right one of the
 * search for the cheapest is the best as well, and its rival is one tolerance worse. Start and run length as there.
 */
export const BEST_PLAN: Suite = selectionSuite(SELECTION);
