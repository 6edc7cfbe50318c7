import { describe, expect, it } from 'vitest';
import { fewestForPrediction, predictionRank } from './prediction-rank.ts';

describe('The rank that one further value stays below', () => {
  it('is the ⌈p (n + 1)⌉-th of n values', () => {
    // k / (n + 1) is exactly p for 199 values.
    expect([0.5, 0.8, 0.9, 0.95].map((p) => predictionRank(p, 199))).toEqual([100, 160, 180, 190]);
    expect(predictionRank(0.8, 200)).toBe(161);
  });

  it('is refused where even the largest value promises less', () => {
    expect(predictionRank(0.95, 18)).toBeNull();
    expect(predictionRank(0.95, 19)).toBe(19);
    expect([0.5, 0.8, 0.9, 0.95].map(fewestForPrediction)).toEqual([1, 4, 9, 19]);
  });

  it('with one value fewer than the fewest there is none, with the fewest it is the largest', () => {
    for (let p = 0.01; p < 0.995; p += 0.01) {
      const fewest = fewestForPrediction(p);
      expect(predictionRank(p, fewest)).not.toBeNull();
      if (fewest > 1) expect(predictionRank(p, fewest - 1)).toBeNull();
    }
  });

  it('refuses what is no probability', () => {
    expect(() => predictionRank(1, 10)).toThrow(RangeError);
    expect(() => predictionRank(0.5, 1.5)).toThrow(RangeError);
  });
});
