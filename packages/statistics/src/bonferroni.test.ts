import { describe, expect, test } from 'vitest';
import { individualLevel, pairedDifferences, simultaneousCriticalValue } from './bonferroni.ts';
import { pairedDifference } from './comparison.ts';
import { normalDraws } from './test-data/normal-draws.ts';

// Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, section 10.3 (recomputed).
describe('statements that are to hold together', () => {
  test('have the published levels', () => {
    expect(individualLevel(0.95, 9)).toBeCloseTo(0.9944444444444445, 14);
    expect(individualLevel(0.95, 1)).toBeCloseTo(0.95, 15);
    // What happens without: ten independent intervals of 95 % all hold less often than two times in three.
    expect(0.95 ** 10).toBeCloseTo(0.5987369392383787, 14);
  });

  test('have the published critical values', () => {
    expect(simultaneousCriticalValue(0.95, 9, 19)).toBeCloseTo(3.126595253166262, 10);
    expect(simultaneousCriticalValue(0.95, 45, 19)).toBeCloseTo(3.8372662075406594, 10);
  });

  test('are at least one', () => {
    expect(() => individualLevel(0.95, 0)).toThrow('at least 1');
    expect(() => individualLevel(0.95, 1.5)).toThrow('at least 1');
    expect(() => individualLevel(1, 2)).toThrow('confidence level');
  });
});

describe('the differences of several systems from one', () => {
  const base = [3, 5, 4, 7, 6];
  const others = [
    [4, 6, 6, 8, 6],
    [1, 4, 2, 6, 3],
  ];

  test('are other less base, each at a level of its own', () => {
    const found = pairedDifferences(base, others, 0.9);
    expect(found.map(({ value }) => value)).toEqual([1, -1.8]);
    others.forEach((other, index) => {
      expect(found[index]).toEqual(pairedDifference(other, base, individualLevel(0.9, 2)));
    });
  });

  test('are wider when more is looked at', () => {
    const [alone] = pairedDifferences(base, others, 0.9);
    const [among] = pairedDifferences(base, others, 0.9, 12);
    expect(among?.level).toBeCloseTo(1 - 0.1 / 12, 14);
    expect(among?.low).toBeLessThan(alone?.low ?? Number.NaN);
    expect(() => pairedDifferences(base, others, 0.9, 1)).toThrow('more than 1 statements');
    expect(pairedDifferences(base, [], 0.9)).toEqual([]);
  });

  test('hold together as often as they should', () => {
    const draw = normalDraws('together');
    let together = 0;
    for (let use = 0; use < 1000; use++) {
      const own = Array.from({ length: 10 }, draw);
      const rivals = Array.from({ length: 8 }, () => own.map((value) => value + 1 + draw()));
      if (pairedDifferences(own, rivals, 0.95).every(({ low, high }) => low <= 1 && 1 <= high)) together++;
    }
    // At least 950 of 1,000 are expected; 926 is the binomial limit at 99.9 %, two-sided.
    expect(together).toBeGreaterThanOrEqual(926);
  });
});
