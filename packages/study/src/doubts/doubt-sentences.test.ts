import type { DoubtEnd, DoubtsAnswer } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { estimate } from '../fixture/plans.ts';
import { doubtSentences } from './doubt-sentences.ts';

type Doubt = DoubtsAnswer['doubts'][number];

function end(factor: number, difference: number, half: number): DoubtEnd {
  const tells = Math.abs(difference) > half;
  return {
    factor,
    value: estimate(48 + difference),
    difference: estimate(difference, half),
    outcome: tells ? 'differs' : 'not told apart',
  };
}

/** @param explains share of the variance, and half the width of its interval */
function doubt(name: string, effect: number, half: number, explains: readonly [number, number]): Doubt {
  const [share, width] = explains;
  return {
    name,
    low: end(0.5, -effect, half),
    typical: 1,
    high: end(2, effect, half),
    effect,
    explains: { ...estimate(share, width), low: Math.max(0, share - width) },
  };
}

function sentences(doubts: readonly Doubt[]): string[] {
  const found: Parameters<typeof doubtSentences>[0] = {
    measure: {
      name: 'mean lead time',
      unit: 'hours',
      better: 'lower',
      asStated: estimate(48),
      isRanked: false,
    },
    doubts: [...doubts],
    explainedTogether: estimate(0.7),
    held: [],
    allHeld: null,
  };
  return doubtSentences(found, 13);
}

describe('Doubts in sentences', () => {
  it('name the largest effect that can be told, not a larger one that may be chance', () => {
    const [effect] = sentences([
      doubt('failed builds', 9, 10, [0.1, 0.05]),
      doubt('demand', 6, 1, [0.5, 0.1]),
    ]);
    expect(effect).toMatch(/^“demand” matters most by itself: at 200 % it moves “mean lead time” from /);
    expect(effect).toContain('No effect can be told of “failed builds”.');
  });

  it('say so where no effect can be told', () => {
    const [effect, next] = sentences([
      doubt('demand', 1, 2, [0.005, 0.01]),
      doubt('rush', 1, 3, [0.001, 0.01]),
    ]);
    expect(effect).toBe('No doubt by itself changes “mean lead time” by more than can be told from chance.');
    expect(next).toMatch(/^Nothing of this is worth measuring first/);
  });

  it('say what to measure first, and which comes close', () => {
    const [, alone] = sentences([doubt('demand', 6, 1, [0.5, 0.1]), doubt('rush', 2, 1, [0.1, 0.05])]);
    expect(alone).toMatch(/^Measure “demand” first: it explains 50 % .* Next is “rush” with 10 % /);
    const [, close] = sentences([doubt('demand', 6, 1, [0.5, 0.1]), doubt('rush', 5, 1, [0.45, 0.1])]);
    expect(close).toContain('“rush” comes close: 45 %');
  });
});
