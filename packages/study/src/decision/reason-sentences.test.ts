import type { DecisionOption, PlanPair } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { reasonSentences } from './reason-sentences.ts';

const value = (of: number, half = 0.02) =>
  ({ kind: 'estimate', value: of, low: of - half, high: of + half, level: 0.95, replications: 100 }) as const;

function option(role: DecisionOption['role'], reached: number, committedCost: number | null): DecisionOption {
  return {
    role,
    name: role,
    changes: [],
    meets: reached >= 0.92 ? 'met' : 'missed',
    why: role === 'faster' ? 'one more of “resin”' : '',
    committedCost,
    purchase: 0,
    targets: [
      {
        target: 'on time at least 92 %',
        asked: 0.92,
        better: 'higher',
        value: value(reached),
        verdict: 'not tested',
      },
    ],
    measures: [],
  };
}

const PAIR: PlanPair = {
  plan: 'faster',
  against: 'recommended',
  sentence: '',
  differences: [
    { measure: 'nine of ten jobs within', difference: value(-6, 1), outcome: 'better', gain: null },
  ],
};

describe('reasonSentences', () => {
  it('say what is reached, what today misses, what a saving misses, and what more brings, at what cost', () => {
    const options = [
      option('today', 0.9, 240_000),
      option('recommended', 0.95, 265_000),
      option('cheaper', 0.85, 250_000),
      option('faster', 0.98, 350_000),
    ];
    const told = reasonSentences({ options, pairs: [PAIR], currency: 'EUR' });
    expect(told.map((sentence) => sentence.replaceAll(/[\u202f\u00a0]/g, ' '))).toEqual([
      'The proposal reaches “on time at least 92 %”: 95 % (93 to 97).',
      'The lab as it is misses “on time at least 92 %”: 90 % (88 to 92); the proposal costs 25 000 EUR a year more, whatever the lab makes.',
      'A plan that saves 15 000 EUR a year, cheaper, misses “on time at least 92 %”: 85 % (83 to 87).',
      'Most would be gained by one more of “resin”: nine of ten jobs 6.0 hours (5.0 to 7.0) sooner, for 85 000 EUR a year more.',
    ]);
  });

  it('speak of no money and of no other option where there is none', () => {
    expect(reasonSentences({ options: [option('today', 0.95, null)], pairs: [], currency: null })).toEqual([
      'As it is the lab reaches “on time at least 92 %”: 95 % (93 to 97).',
    ]);
  });
});
