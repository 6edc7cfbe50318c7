import { describe, expect, it } from 'vitest';
import type { Band } from './measures.ts';
import { lastingGrowth, meanOfBand, trendOf } from './trend.ts';

function band(value: readonly number[], half = 1): Band {
  return {
    value: [...value],
    low: value.map((one) => one - half),
    high: value.map((one) => one + half),
    level: 0.95,
    replications: 100,
  };
}

describe('trendOf', () => {
  it('says growth from the mean of the first to the mean of the last quarter', () => {
    expect(trendOf(band([10, 12, 14, 16, 18, 20, 22, 24]))).toMatchObject({
      kind: 'grows',
      from: { value: 11, low: 10, high: 12 },
      to: { value: 23 },
    });
    expect(trendOf(band([24, 20, 14, 10]))).toMatchObject({ kind: 'falls', to: { value: 10 } });
  });

  it('is steady where the intervals meet, for a single week, and after a bump that has passed', () => {
    expect(trendOf(band([10, 10, 11, 11.5])).kind).toBe('steady');
    expect(trendOf(band([10])).kind).toBe('steady');
    expect(trendOf(band([10, 30, 30, 10])).kind).toBe('steady');
  });
});

describe('lastingGrowth', () => {
  it('sees a backlog that grows all the time', () => {
    expect(lastingGrowth(band([70, 74, 80, 85, 90, 92, 93, 108, 121, 123, 125, 127, 130]))).toMatchObject({
      to: { value: (125 + 127 + 130) / 3 },
    });
  });

  it('takes growth of less than a quarter, a passing bump, and the filling of an empty lab for none', () => {
    expect(lastingGrowth(band([100, 101, 103, 105, 107, 109, 110, 111]))).toBeNull();
    expect(lastingGrowth(band([17, 18, 18, 20, 29, 24, 21, 28, 28, 22, 19, 18, 18]))).toBeNull();
    expect(lastingGrowth(band([4, 12, 18, 18, 18, 18.4, 18, 18]))).toBeNull();
  });
});

describe('meanOfBand', () => {
  it('has an interval made of the mean ends', () => {
    expect(meanOfBand(band([1, 3]))).toMatchObject({ value: 2, low: 1, high: 3 });
  });

  it('is 0 for a curve without points', () => {
    expect(meanOfBand(band([])).value).toBe(0);
  });
});
