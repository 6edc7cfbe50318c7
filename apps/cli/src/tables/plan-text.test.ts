import type { PlanAnswer } from '@buildweek/results';
import { expect, test } from 'vitest';
import { styleFor } from '../terminal/style.ts';
import { planText } from './plan-text.ts';

const estimate = (value: number) => ({ kind: 'estimate', value, low: value, high: value, level: 0.95 });

function plan(name: string, role: string, more: object = {}) {
  return {
    name,
    role,
    choices: [{ what: 'resin', value: name.replace('resin ', '') }],
    isToday: false,
    committedCost: 100_000,
    purchase: 3000,
    verdict: 'missed',
    why: '',
    targets: [{ target: '90 % of jobs within 3 working days', asked: 0.9, value: estimate(0.8) }],
    measures: [{ name: 'nine of ten jobs within', value: estimate(120) }],
    ...more,
  };
}

function text(currency: string | null): string {
  const cost = currency === null ? { committedCost: null, purchase: null } : {};
  const answer = {
    scenario: { name: 'lab' },
    headline: ['Take resin 3.'],
    currency,
    varied: [{ what: 'resin', choices: '1 to 4', today: '1' }],
    shown: [
      plan('resin 3', 'chosen', { verdict: 'met', isToday: true, ...cost }),
      plan('resin 2', 'next below', {
        why: 'misses “90 % of jobs within 3 working days”',
        purchase: 0,
        ...cost,
      }),
      plan('resin 4', 'one more', { verdict: 'not tested', why: 'one more of “resin”', ...cost }),
    ],
    ruledOut: [],
    plans: 4,
    looked: [],
    notLookedAt: 1,
    run: { weeks: 13, replications: 100, seed: '1', ignoredWeeks: { weeks: 1 } },
    promise: '',
    handCalculation: [],
    cautions: [],
    warnings: [],
  } as unknown as PlanAnswer;
  return planText(answer, styleFor({ isTTY: false, write: () => true }));
}

test('every plan has its name with what it is, why it is not the answer, and what is to be bought', () => {
  const lines = text('EUR').split('\n');
  expect(lines).toContain('  resin 3: the answer, today, meets all, 3\u202f000 EUR to buy');
  expect(lines.find((line) => line.startsWith('  resin 2:'))).toBe('  resin 2: next cheaper, misses [1]');
  expect(lines.find((line) => line.startsWith('  resin 4:'))).toMatch(
    /: one more of “resin”, not tested, 3\D000 EUR/,
  );
});

test('times beside a target in working days are said to be by the clock', () => {
  expect(text('EUR').replace(/\s+/g, ' ')).toContain(
    'Times are by the clock, nights and closed days included',
  );
});

test('without money plans are smaller, not cheaper, and nothing is bought', () => {
  const found = text(null);
  expect(found).toContain('  resin 2: next smaller, misses [1]\n');
  expect(found).not.toMatch(/EUR|to buy|cheaper/);
});
