import { describe, expect, it } from 'vitest';
import { targetsFixture } from './fixture/targets-fixture.ts';
import { confidenceNote, targetConfidence, targetFound } from './target-words.ts';

const [met, missed, open, empty] = targetsFixture();
const said = (target: typeof met, words: (one: NonNullable<typeof met>) => string): string =>
  target === undefined ? '' : words(target).replaceAll('\u00a0', ' ');

describe('a target in words', () => {
  it('tells what was found, in periods where these count, or why there is nothing', () => {
    expect(said(met, (one) => targetFound(one, 13))).toBe('93.4 % (92.6 to 94.2)');
    expect(said(missed, (one) => targetFound(one, 13))).toBe('in 71 % (65 to 77) of quarters');
    expect(said(missed, (one) => targetFound(one, 1))).toBe('in 71 % (65 to 77) of periods of 1 week');
    expect(said(empty, (one) => targetFound(one, 13))).toBe('not given: No such job came.');
  });

  it('tells amounts of money, which may be known beforehand', () => {
    const known = said(met, (one) =>
      targetFound({ ...one, currency: 'EUR', found: { kind: 'known', value: 38_600 } }, 13),
    );
    expect(known.replaceAll('\u202f', ' ')).toBe('38 600 EUR');
    expect(
      said(met, (one) => targetConfidence({ ...one, found: { kind: 'known', value: 1 }, confidence: null })),
    ).toBe('known beforehand');
    const cost = {
      kind: 'estimate',
      value: 11.5,
      low: 11.2,
      high: 11.8,
      level: 0.95,
      replications: 100,
    } as const;
    expect(said(met, (one) => targetFound({ ...one, currency: 'EUR', found: cost }, 13))).toBe(
      '11.50 EUR (11.20 to 11.80)',
    );
  });

  it('tells the confidence of the verdict, or of the nearer one', () => {
    expect(said(met, targetConfidence)).toBe('over 99.9 % confidence');
    expect(said(missed, targetConfidence)).toBe('99.6 % confidence');
    expect(said(open, targetConfidence)).toBe('83.1 % confidence for met');
    expect(said(empty, targetConfidence)).toBe('');
  });

  it('never rounds up to what would have been enough', () => {
    const nearly = (confidence: { met: number; missed: number }): string =>
      said(open, (one) => targetConfidence({ ...one, confidence }));
    expect(nearly({ met: 0.94999, missed: 0.05001 })).toBe('94.9 % confidence for met');
    expect(nearly({ met: 0.2, missed: 0.8 })).toBe('80.0 % confidence for missed');
  });

  it('says what a confidence is, where there are targets', () => {
    expect(confidenceNote([])).toBe('');
    expect(said(met, (one) => confidenceNote([one]))).toContain(
      'from 95 % on a target is called met or missed',
    );
  });
});
