import { binomialCumulative } from '@buildweek/numbers';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { globalEnvelope, ranksFromNearerEnd } from './global-envelope.ts';

/** Uniform numbers. Source: D. H. Lehmer's generator with the constants of Park and Miller (1988), from memory. */
function uniforms(seed: number): () => number {
  let state = seed;
  return () => {
    state = (16_807 * state) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** Random walks: their places depend on each other as weeks do. */
function walks(histories: number, places: number, draw: () => number, drift = 0): number[][] {
  return Array.from({ length: histories }, (_, history) => {
    let level = 0;
    return Array.from({ length: places }, () => {
      level += draw() - 0.5 + (history === 0 ? drift : 0);
      return level;
    });
  });
}

const twenty = (of: (history: number) => number[]): number[][] =>
  Array.from({ length: 20 }, (_, history) => of(history));

describe('ranks from the nearer end', () => {
  test('are 1 for the smallest and the largest, and shared by values that are equal', () => {
    const ranks = ranksFromNearerEnd([[1], [2], [2], [3], [9]]);
    expect(ranks.map(([rank]) => rank)).toEqual([1, 2.5, 2.5, 2, 1]);
  });
});

describe('the rank test over whole bands', () => {
  test('calls the one that is on the edge at most places the most extreme', () => {
    // History 0 is the largest at both places; history 19 the smallest at one, history 18 at the other.
    const family = twenty((history) => [
      history === 0 ? 99 : 20 - history,
      history === 0 ? 99 : (history + 2) % 20,
    ]);
    const { pValue, bands } = globalEnvelope([family], 0.05);
    expect(pValue).toBe(1 / 20);
    expect(bands[0]?.isLeft).toBe(true);
    // The band is what the other nineteen span.
    expect([...(bands[0]?.low ?? [])]).toEqual([1, 0]);
    expect([...(bands[0]?.high ?? [])]).toEqual([19, 19]);
  });

  test('lets families weigh the same, whatever their number of places', () => {
    const flat = (history: number): number[] => [(history * 7) % 20];
    const many = twenty((history) => Array.from({ length: 50 }, (_, place) => (history * 3 + place) % 20));
    const one = globalEnvelope([twenty(flat), many], 0.05).pValue;
    const again = globalEnvelope([twenty(flat), many.map((curve) => [...curve, ...curve])], 0.05).pValue;
    expect(again).toBe(one);
  });

  test('counts those that are equally extreme against an alarm', () => {
    expect(globalEnvelope([twenty(() => [5, 5])], 0.05).pValue).toBe(1);
  });

  test('raises an alarm exactly when the history leaves the band, where no values are equal', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e9 }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        (seed, drift) => {
          const draw = uniforms(seed);
          const families = [walks(40, 6, draw, drift), walks(40, 3, draw, drift)];
          const { pValue, bands } = globalEnvelope(families, 0.1);
          expect(bands.some(({ isLeft }) => isLeft)).toBe(pValue <= 0.1);
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });

  test('does not change when values are stretched, and when histories other than the tested one change places', () => {
    const draw = uniforms(11);
    const families = [walks(40, 5, draw, 0.1), walks(40, 8, draw)];
    const { pValue } = globalEnvelope(families, 0.05);
    const stretched = families.map((family) =>
      family.map((curve) => curve.map((value) => Math.exp(3 * value))),
    );
    expect(globalEnvelope(stretched, 0.05).pValue).toBe(pValue);
    const turned = families.map(([first = [], ...others]) => [first, ...others.reverse()]);
    expect(globalEnvelope(turned, 0.05).pValue).toBe(pValue);
  });

  test('calls a history like the others contradicted as often as stated, over all families together', () => {
    const draw = uniforms(5);
    let alarms = 0;
    for (let use = 0; use < 1000; use++) {
      const families = [walks(20, 8, draw), walks(20, 2, draw), walks(20, 15, draw)];
      if (globalEnvelope(families, 0.1).pValue <= 0.1) alarms++;
    }
    // Bounds that blame what is right once in a thousand times; hardly any histories are equally extreme.
    expect(binomialCumulative(alarms, 1000, 0.1)).toBeGreaterThan(0.0005);
    expect(binomialCumulative(alarms - 1, 1000, 0.1)).toBeLessThan(0.9995);
  });

  test('sees a history that drifts away', () => {
    const draw = uniforms(3);
    expect(globalEnvelope([walks(100, 20, draw, 0.5), walks(100, 20, draw)], 0.05).pValue).toBe(0.01);
  });

  test('refuses what does not fit together', () => {
    const family = twenty((history) => [history]);
    expect(() => globalEnvelope([family.slice(1)], 0.05)).toThrow('At least 20');
    expect(() => globalEnvelope([family, [...family, [3]]], 0.05)).toThrow('same histories');
    expect(() => globalEnvelope([twenty(() => [])], 0.05)).toThrow('at least one place');
    expect(() => globalEnvelope([twenty((history) => (history === 3 ? [1, 2] : [1]))], 0.05)).toThrow(
      'length',
    );
    expect(() => globalEnvelope([twenty((history) => [history === 3 ? Number.NaN : 1])], 0.05)).toThrow(
      'number',
    );
    expect(() => globalEnvelope([family], 1)).toThrow('strictly between');
  });
});
