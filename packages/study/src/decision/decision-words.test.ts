import type { Money } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { orderSentences, proposalOf } from './decision-words.ts';

const MORE = { what: 'resin', from: '2', to: '3', change: 'machines / resin / count: 3' };
const HOURS = {
  what: 'technicians / hours',
  from: 'day',
  to: 'late',
  change: 'people / technicians / hours: late',
};
const NO_MONEY = { money: null, moneyToday: null };

function buying(group: string, count: number, leadWeeks: number): Money {
  return { purchases: [{ group, count, amount: 1, leadWeeks }] } as unknown as Money;
}

describe('proposalOf', () => {
  it('names everything that changes, from what to what', () => {
    expect(proposalOf({ changes: [MORE, HOURS], isMet: true, ...NO_MONEY })).toBe(
      'Change “resin” from 2 to 3 and “technicians / hours” from day to late: the cheapest plan that meets the targets.',
    );
  });

  it('claims no more than was found', () => {
    expect(proposalOf({ changes: [MORE], isMet: false, ...NO_MONEY })).toContain('no plan meets the targets');
    expect(proposalOf({ changes: [], isMet: true, ...NO_MONEY })).toContain(
      'Change nothing: the lab as it is meets',
    );
    expect(proposalOf({ changes: [], isMet: false, ...NO_MONEY })).toContain('Change nothing yet');
  });
});

describe('orderSentences', () => {
  it('says how long it takes from the order, of what is bought beyond today', () => {
    const facts = { changes: [MORE], isMet: true };
    expect(
      orderSentences({ ...facts, money: buying('resin', 3, 4), moneyToday: buying('resin', 2, 4) }),
    ).toEqual(['From the order until it works: resin 4 weeks.']);
    expect(
      orderSentences({ ...facts, money: buying('resin', 2, 4), moneyToday: buying('resin', 2, 4) }),
    ).toEqual([]);
  });
});
