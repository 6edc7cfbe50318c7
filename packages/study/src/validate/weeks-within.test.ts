import { describe, expect, it } from 'vitest';
import { weeksWithin } from './weeks-within.ts';

/** Twenty histories; history h has the rank h + 1 in every week, from below. */
const RISING = Array.from({ length: 20 }, (_, history) => [history, history, history]);
const FLAT = Array.from({ length: 20 }, () => [4, 4]);

describe('weeksWithin', () => {
  it('calls about a tenth of the weeks of all histories unusual', () => {
    const { counts, usual, bands } = weeksWithin([{ curves: RISING, weeks: [0, 1, 2] }]);
    expect(counts).toEqual([0, ...Array(18).fill(3), 0]);
    expect(usual).toBe(0.9);
    expect([...(bands[0]?.low ?? [])]).toEqual([1, 1, 1]);
    expect([...(bands[0]?.high ?? [])]).toEqual([18, 18, 18]);
  });

  it('calls a week unusual when one of the measures is, in the weeks that it has', () => {
    const { counts } = weeksWithin([
      { curves: FLAT, weeks: [0, 1] },
      { curves: RISING, weeks: [0, 1, 2] },
    ]);
    expect(counts[0]).toBe(0);
    // The measure without a value in week 2 says nothing of it.
    const other = weeksWithin([
      { curves: RISING.map(([one = 0]) => [one]), weeks: [1] },
      { curves: FLAT, weeks: [0, 1] },
    ]);
    expect(other.counts[0]).toBe(1);
    expect(other.counts[10]).toBe(2);
  });
});
