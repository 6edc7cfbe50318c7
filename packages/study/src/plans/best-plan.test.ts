import { describe, expect, it } from 'vitest';
import { queueLab } from '../fixture/lab.ts';
import { candidate } from '../fixture/plans.ts';
import { toldMeasure, toldPlans } from '../fixture/told-plans.ts';
import { type BestPlanSettings, bestPlan } from './best-plan.ts';
import type { PlanQuestion } from './plan-answer.ts';
import { UnanswerableError } from './unanswerable-error.ts';

const LAB = queueLab();
const MEASURES = [
  toldMeasure('nine of ten jobs within'),
  toldMeasure('jobs on time', { unit: 'share', better: 'higher' }),
];
const SETTINGS: BestPlanSettings = {
  by: 'p90',
  budget: null,
  indifference: 0.02,
  alpha: 0.05,
  most: 200,
  weeks: 4,
  playedWeeks: 8,
};

interface Told {
  readonly hours: number;
  readonly onTime: number;
  readonly cost: number;
}

const PLANS: Readonly<Record<string, Told>> = {
  cheap: { hours: 60, onTime: 0.7, cost: 100 },
  middle: { hours: 50, onTime: 0.9, cost: 200 },
  dear: { hours: 40, onTime: 0.8, cost: 300 },
};

function question(plans: Readonly<Record<string, Told>>): PlanQuestion {
  return {
    plans: Object.entries(plans).map(([name, { cost }], index) =>
      candidate(LAB, { name, isToday: index === 0, committedCost: cost }),
    ),
    targets: [],
    counts: [],
    wordings: [],
    currency: 'EUR',
    firstTarget: 2,
    level: 0.95,
  };
}

function told(plans: Readonly<Record<string, Told>>) {
  return toldPlans(MEASURES, (plan, replication) => {
    const { hours = 0, onTime = 0 } = plans[plan] ?? {};
    // Plans do not have quite the same luck.
    const luck = ((replication * (plan.length % 2 === 0 ? 5 : 7)) % 11) - 5;
    return [hours + luck / 5, 1, 100 * onTime + luck / 5, 100];
  });
}

async function best(more: Partial<BestPlanSettings>, plans = PLANS) {
  const found = await bestPlan(question(plans), told(plans).observed, { ...SETTINGS, ...more });
  if (found === null) throw new Error('Nobody stopped it.');
  return found;
}

describe('the best plan', () => {
  it('is the one whose nine of ten jobs are the fastest, or whose late jobs are the fewest', async () => {
    expect((await best({})).chosen).toBe('dear');
    expect((await best({ by: 'late' })).chosen).toBe('middle');
  });

  it('says so in words, with what today comes to', async () => {
    const { headline, question: asked } = await best({ by: 'late', budget: 250 });
    expect(asked).toBe('Which plan has the smallest share of late jobs for at most 250 EUR a year?');
    expect(headline[0]).toMatch(
      /^Take middle: of 2 plans within the budget it has the smallest share of late jobs, 10(\.\d+)? % \(.*\) late, at 200 EUR a year\.$/,
    );
    expect(headline[1]).toMatch(/^Today's plan, cheap, has 30(\.\d+)? % \(.*\) late\.$/);
  });

  it('is looked for within the budget only, and says how many plans are beyond it', async () => {
    const found = await best({ budget: 200 });
    expect(found.chosen).toBe('middle');
    expect(found.ruledOut).toEqual([{ reason: 'is beyond the budget', plans: 1, example: 'dear' }]);
    const { asked, observed } = told(PLANS);
    await bestPlan(question(PLANS), observed, { ...SETTINGS, budget: 200 });
    expect([...asked.keys()]).not.toContain('dear');
  });

  it('holds to budgets among the targets as well', async () => {
    const budget = { kind: 'budget', wording: 'budget at most 150', of: 'year', atMost: 150 } as const;
    const found = await bestPlan({ ...question(PLANS), targets: [budget] }, told(PLANS).observed, SETTINGS);
    expect(found?.chosen).toBe('cheap');
    // There was nothing to choose from.
    expect(found?.looked).toEqual([]);
  });

  it('says by which plan each of the others is beaten', async () => {
    const { looked, shown } = await best({});
    expect(looked.map(({ name, verdict, by }) => [name, verdict, by])).toEqual([
      ['dear', 'left', ''],
      ['middle', 'beaten', 'dear'],
      ['cheap', 'beaten', 'dear'],
    ]);
    expect(shown.map(({ name, role }) => `${name}: ${role}`)).toEqual([
      'dear: chosen',
      'cheap: today',
      'middle: near miss',
    ]);
  });

  it('is left open among plans that cannot be told apart', async () => {
    const alike = { one: { hours: 50, onTime: 0.9, cost: 1 }, four: { hours: 50.01, onTime: 0.9, cost: 2 } };
    const found = await best({ most: 20, indifference: 0.0001 }, alike);
    expect(found.chosen).toBeNull();
    expect(found.headline[0]).toContain('One of 2 plans that cannot be told apart is one');
  });

  it('takes a time beyond the end for as long as was played', async () => {
    const found = await best(
      {},
      { ...PLANS, cheap: { hours: Number.POSITIVE_INFINITY, onTime: 0, cost: 100 } },
    );
    expect(found.chosen).toBe('dear');
  });

  it('is refused where no plan is within the budget, or nothing can be late', async () => {
    await expect(best({ budget: 50 })).rejects.toThrow(
      new UnanswerableError(
        'No plan in the range is within the budget: the least is 100 EUR a year, and 0 EUR for purchases. Widen the ranges downwards, or the budget.',
      ),
    );
    const speed = toldPlans(MEASURES.slice(0, 1), () => [1, 1]).observed;
    await expect(bestPlan(question(PLANS), speed, { ...SETTINGS, by: 'late' })).rejects.toThrow(
      'none can be late',
    );
  });
});
