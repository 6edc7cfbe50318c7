import type { CountVariation } from '@buildweek/model';
import type { PlanDifference, ShownPlan } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { lab, machine, people } from '../fixture/lab.ts';
import { candidatePlans } from '../plans/plan-space.ts';
import { changedChoices, optionPlans } from './option-plans.ts';

const COUNTS: readonly CountVariation[] = [
  { kind: 'count', of: 'people', group: 'technicians', from: 1, to: 2 },
  { kind: 'count', of: 'machines', group: 'resin', from: 1, to: 3 },
];
const LAB = lab({ people: [people('technicians', 1, ['hands'])], machines: [machine('resin')] });
const PLANS = candidatePlans([{ options: [], isToday: true, lab: LAB, economics: null }], COUNTS);

interface Told {
  readonly technicians: number;
  readonly resin: number;
  readonly role: ShownPlan['role'];
  readonly cost: number;
  readonly reached?: number;
  /** Hours by which nine of ten jobs are later than with the answer; a gain when it is told. */
  readonly later?: number;
}

function shown({ technicians, resin, role, cost, reached = 0.9, later }: Told): ShownPlan {
  const value = (of: number) =>
    ({
      kind: 'estimate',
      value: of,
      low: of - 0.01,
      high: of + 0.01,
      level: 0.95,
      replications: 40,
    }) as const;
  const difference: PlanDifference[] =
    later === undefined
      ? []
      : [
          {
            measure: 'nine of ten jobs within',
            difference: value(later),
            outcome: later < 0 ? 'better' : 'worse',
            gain: null,
          },
        ];
  return {
    name: `technicians ${technicians}, resin ${resin}`,
    role,
    choices: [
      { what: 'technicians', value: String(technicians) },
      { what: 'resin', value: String(resin) },
    ],
    isToday: role === 'today',
    committedCost: cost,
    purchase: 0,
    verdict: role === 'chosen' ? 'met' : 'missed',
    why: '',
    replications: 40,
    targets: [
      {
        target: 'on time at least 92 %',
        asked: 0.92,
        better: 'higher',
        value: value(reached),
        verdict: 'missed',
      },
    ],
    measures: [],
    handHours: null,
    againstChosen: difference,
  };
}

const TODAY = shown({ technicians: 1, resin: 1, role: 'today', cost: 100, reached: 0.5 });
const CHOSEN = shown({ technicians: 2, resin: 2, role: 'chosen', cost: 190, reached: 0.95 });

function rolesOf(plans: readonly ShownPlan[]): string[][] {
  return optionPlans(plans, PLANS, COUNTS).map(({ role, plan }) => [role, plan.name]);
}

describe('optionPlans', () => {
  it('takes today, the answer, the cheaper plan that misses by least, and one more of what gains most', () => {
    expect(
      rolesOf([
        CHOSEN,
        TODAY,
        shown({ technicians: 1, resin: 3, role: 'near miss', cost: 120, reached: 0.85 }),
        shown({ technicians: 2, resin: 1, role: 'next below', cost: 180, reached: 0.6 }),
        shown({ technicians: 3, resin: 2, role: 'one more', cost: 280, later: -3 }),
        shown({ technicians: 2, resin: 3, role: 'one more', cost: 200, later: -9 }),
      ]),
    ).toEqual([
      ['today', 'technicians 1, resin 1'],
      ['recommended', 'technicians 2, resin 2'],
      ['cheaper', 'technicians 1, resin 3'],
      ['faster', 'technicians 2, resin 3'],
    ]);
  });

  it('makes the lab of a plan that lies beyond the ranges', () => {
    const [, , faster] = optionPlans(
      [CHOSEN, TODAY, shown({ technicians: 3, resin: 2, role: 'one more', cost: 280, later: -3 })],
      PLANS,
      COUNTS,
    );
    expect(faster?.plan.lab.people[0]?.count).toBe(3);
    expect(faster?.plan.lab.machines[0]?.count).toBe(2);
  });

  it('recommends what comes closest where nothing meets the targets', () => {
    const near = shown({ technicians: 2, resin: 3, role: 'near miss', cost: 200, reached: 0.91 });
    expect(rolesOf([TODAY, near])).toEqual([
      ['today', 'technicians 1, resin 1'],
      ['recommended', 'technicians 2, resin 3'],
    ]);
  });

  it('tells a plan that is today’s once, as today’s', () => {
    const same = { ...TODAY, role: 'chosen', verdict: 'met' } as const;
    expect(rolesOf([same])).toEqual([['today', 'technicians 1, resin 1']]);
  });

  it('calls nothing faster that is not told apart', () => {
    expect(
      rolesOf([CHOSEN, TODAY, shown({ technicians: 2, resin: 3, role: 'one more', cost: 200, later: 2 })]),
    ).toHaveLength(2);
  });
});

describe('changedChoices', () => {
  it('gives what differs from today, as --with takes it', () => {
    const today = [
      { what: 'technicians', today: '1' },
      { what: 'resin', today: '2' },
    ];
    expect(changedChoices(CHOSEN.choices, today, COUNTS)).toEqual([
      { what: 'technicians', from: '1', to: '2', change: 'people / technicians / count: 2' },
    ]);
  });
});
