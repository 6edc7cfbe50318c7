import type { TargetResult, TargetVerdict } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { targetSentences } from './target-sentences.ts';

function target(wording: string, verdict: TargetVerdict, more: Partial<TargetResult> = {}): TargetResult {
  return {
    wording,
    meaning: '',
    kind: 'on time',
    currency: null,
    bound: 'at least',
    asked: 0.95,
    found: share(0.91),
    periods: null,
    verdict,
    confidence: { met: 0.5, missed: 0.5 },
    level: 0.95,
    ...more,
  };
}

function share(value: number) {
  return {
    kind: 'estimate',
    value,
    low: value - 0.01,
    high: value + 0.01,
    level: 0.95,
    replications: 100,
  } as const;
}

describe('targetSentences', () => {
  it('says nothing where nothing is promised', () => {
    expect(targetSentences([], 13)).toEqual([]);
  });

  it('counts the targets that are met, and names those that are not', () => {
    expect(targetSentences([target('a', 'met'), target('b', 'met')], 13)).toEqual(['All 2 targets are met.']);
    expect(
      targetSentences([target('a', 'met'), target('b', 'missed'), target('c', 'not decided')], 13),
    ).toEqual([
      '1 of 3 targets are met; missed: “b”, found 91 % (90 to 92); not decided at this precision: “c”, found 91 % (90 to 92).',
    ]);
  });

  it('names two of each, and counts the others', () => {
    const missed = ['a', 'b', 'c', 'd'].map((name) => target(name, 'missed'));
    expect(targetSentences(missed, 13)).toEqual([
      '0 of 4 targets are met; missed: “a”, found 91 % (90 to 92); “b”, found 91 % (90 to 92); and 2 more.',
    ]);
  });

  it('speaks of a single one by name', () => {
    expect(targetSentences([target('a', 'met')], 13)).toEqual([
      'The target is met: “a”, found 91 % (90 to 92).',
    ]);
    expect(targetSentences([target('a', 'missed')], 13)[0]).toMatch(/^The target is missed: “a”/);
    const nothing = target('a', 'not decided', { found: { kind: 'refused', reason: 'No such job came.' } });
    expect(targetSentences([nothing], 13)).toEqual([
      'The target is not decided at this precision: “a”, nothing found.',
    ]);
  });

  it('tells amounts of money', () => {
    const budget = target('budget at most 40000', 'missed', {
      kind: 'budget',
      currency: 'EUR',
      found: { kind: 'known', value: 41_234.6 },
      confidence: null,
    });
    expect(targetSentences([budget], 13)[0]?.replaceAll(/[\u00a0\u202f]/g, ' ')).toBe(
      'The target is missed: “budget at most 40000”, which comes to 41 235 EUR.',
    );
    const cost = target('cost per part at most 12', 'met', {
      currency: 'EUR',
      found: { ...share(11.5), low: 11.2, high: 11.8 },
    });
    expect(targetSentences([cost], 13)[0]?.replaceAll('\u00a0', ' ')).toContain(
      'found 11.50 EUR (11.20 to 11.80).',
    );
  });

  it('tells periods where these are what counts', () => {
    const quarters = target('a', 'missed', { periods: { asked: 0.9, found: share(0.7) } });
    expect(targetSentences([quarters], 13)[0]).toContain('found in 70 % (69 to 71) of quarters.');
    expect(targetSentences([quarters], 6)[0]).toContain('of periods of 6 weeks.');
  });
});
