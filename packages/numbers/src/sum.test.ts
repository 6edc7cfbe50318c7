import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sum } from './sum.ts';

describe('a sum', () => {
  test('keeps what plain addition loses', () => {
    expect(sum([1, 1e100, 1, -1e100])).toBe(2);
    expect(sum(new Float64Array(10).fill(0.1))).toBe(1);
  });

  test('of whole numbers is exact, in any order', () => {
    fc.assert(
      fc.property(fc.array(fc.integer()), (values) => {
        const exact = Number(values.reduce((total, value) => total + BigInt(value), 0n));
        expect(sum(values)).toBe(exact);
        expect(sum([...values].reverse())).toBe(exact);
      }),
      { seed: 12 },
    );
  });

  test('of nothing is zero, and of something infinite is infinite', () => {
    expect(sum([])).toBe(0);
    expect(sum([1, Number.POSITIVE_INFINITY, 2])).toBe(Number.POSITIVE_INFINITY);
    expect(sum([1, Number.NaN])).toBeNaN();
  });
});
