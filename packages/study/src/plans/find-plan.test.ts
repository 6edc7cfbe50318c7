import { describe, expect, it } from 'vitest';
import { queueLab } from '../fixture/lab.ts';
import { candidate, shareWithin } from '../fixture/plans.ts';
import { toldMeasure, toldPlans } from '../fixture/told-plans.ts';
import { findPlan, type PlanSearch, type PlanSearchSettings } from './find-plan.ts';

const SETTINGS: PlanSearchSettings = { indifference: 0.02, alpha: 0.05, most: 400, weeks: 13 };
const TARGET = shareWithin(0.9);
const LAB = queueLab();

/** Share of 100 jobs in time, by plan: 4 jobs more and 4 fewer in turns. */
type Shares = Readonly<Record<string, number>>;

function told(shares: Shares, stop?: { readonly aborted: boolean }) {
  return toldPlans(
    [toldMeasure(TARGET.wording)],
    (plan, replication) => [100 * (shares[plan] ?? 0) + (replication % 2 === 0 ? 4 : -4), 100],
    stop,
  );
}

function plansOf(shares: Shares, today = Object.keys(shares)[0]) {
  return Object.keys(shares).map((name) => candidate(LAB, { name, isToday: name === today }));
}

async function search(shares: Shares, more: Partial<PlanSearchSettings> = {}): Promise<PlanSearch> {
  const settings = { ...SETTINGS, ...more };
  const found = await findPlan(plansOf(shares), [TARGET], told(shares).observed, 0, settings);
  if (found === null) throw new Error('Nobody stopped it.');
  return found;
}

function verdicts({ candidates, found }: PlanSearch): string[] {
  return found.looked.map(({ candidate: index, state }) => `${candidates[index]?.name} ${state}`);
}

describe('a search for the cheapest plan', () => {
  it('goes up in the order of the plans and stops at the first that is good', async () => {
    const result = await search({ one: 0.7, two: 0.85, three: 0.96, four: 0.99 });
    expect(verdicts(result)).toEqual(['one missed', 'two missed', 'three met']);
    expect(result.found.chosen).toBe(2);
  });

  it('plays no plan that is dearer than the answer', async () => {
    const shares = { one: 0.7, two: 0.96, three: 0.99 };
    const { observed, asked } = told(shares);
    await findPlan(plansOf(shares), [TARGET], observed, 0, SETTINGS);
    expect([...asked.keys()]).toEqual(['one', 'two']);
    // A plan far from its target is missed as soon as the first stage allows.
    expect(asked.get('one')).toBe(10);
    expect(asked.get('two')).toBe(60);
  });

  it('takes a share of the usual jobs as its distance from the target', async () => {
    const { found, constraints } = await search({ one: 0.85, two: 0.96 });
    expect(constraints[0]?.usualDenominator).toBe(100);
    expect(found.looked[0]?.constraints[0]?.mean).toBeCloseTo(-0.05, 12);
  });

  it('leaves a plan open that is too close to its target for the replications it may take, and goes on', async () => {
    const result = await search({ one: 0.9, two: 0.97 }, { most: 70, indifference: 0.005 });
    expect(verdicts(result)).toEqual(['one undecided', 'two met']);
    expect(result.found.undecided).toEqual([0]);
    expect(result.found.looked[0]?.replications).toBe(70);
  });

  it('never plays what is ruled out, but takes the usual jobs from today though today is ruled out', async () => {
    const shares = { today: 0.99, dear: 0.99, cheap: 0.99 };
    const { observed, asked } = told(shares);
    const budget = { kind: 'budget', wording: 'budget at most 100', of: 'year', atMost: 100 } as const;
    const cost = { today: 200, dear: 300, cheap: 100 };
    const plans = plansOf(shares).map((plan) => ({
      ...plan,
      committedCost: cost[plan.name as keyof typeof cost],
    }));
    const result = await findPlan(plans, [TARGET, budget], observed, 0, SETTINGS);
    expect(result?.ruledOut.map(({ plan }) => plan.name)).toEqual(['today', 'dear']);
    expect(result?.candidates.map(({ name }) => name)).toEqual(['cheap']);
    expect(Object.fromEntries(asked)).toEqual({ today: 10, cheap: 60 });
    // Budgets are no matter of observation.
    expect(result?.constraints).toHaveLength(1);
  });

  it('says that every plan is ruled out instead of searching among none', async () => {
    const budget = { kind: 'budget', wording: 'budget at most 1', of: 'year', atMost: 1 } as const;
    const plans = plansOf({ one: 0.99 }).map((plan) => ({ ...plan, committedCost: 2 }));
    const result = await findPlan(plans, [TARGET, budget], told({ one: 0.99 }).observed, 0, SETTINGS);
    expect(result?.found).toMatchObject({ chosen: null, looked: [] });
    expect(result?.ruledOut).toHaveLength(1);
  });

  it('is null when somebody stopped, at the usual jobs as in the middle', async () => {
    const shares = { one: 0.7, two: 0.96 };
    expect(
      await findPlan(plansOf(shares), [TARGET], told(shares, { aborted: true }).observed, 0, SETTINGS),
    ).toBeNull();
    let asked = 0;
    const later = {
      get aborted() {
        return asked++ > 25;
      },
    };
    expect(await findPlan(plansOf(shares), [TARGET], told(shares, later).observed, 0, SETTINGS)).toBeNull();
  });
});
