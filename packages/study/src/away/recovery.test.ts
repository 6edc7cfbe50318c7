import { describe, expect, it } from 'vitest';
import { mostNormal, recovery } from './recovery.ts';

const THERE = [20, 20, 20, 20, 20, 20];

function extra(...values: readonly number[]) {
  return values.map((value) => ({ value, low: value - 0.6, high: value + 0.6 }));
}

describe('recovery', () => {
  it('is the first week after the return with at most a twentieth more jobs in the lab', () => {
    // Up to 21 of 20 jobs are normal; the interval is back one week earlier, or later.
    const found = recovery(THERE, extra(0, 8, 6, 3, 1.5, 0.9), 2);
    expect(found).toEqual({ weeks: 3, low: 2, high: null });
  });

  it('takes no week where the lab is as usual by the return', () => {
    expect(recovery(THERE, extra(0, 0.3, 0.2, 0, 0, 0), 2)).toEqual({ weeks: 0, low: 0, high: 0 });
  });

  it('is not known where it lies behind the weeks that were played', () => {
    expect(recovery(THERE, extra(0, 8, 7, 6, 5, 4), 2)).toEqual({ weeks: null, low: null, high: null });
  });

  it('allows half a job in a small lab', () => {
    expect(mostNormal(2)).toBe(2.5);
    expect(mostNormal(40)).toBe(42);
  });
});
