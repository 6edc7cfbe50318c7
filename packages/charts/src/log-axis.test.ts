import fc from 'fast-check';
import { expect, test } from 'vitest';
import { logAxis, shareOf } from './log-axis.ts';

test('Ticks are round numbers, with finer ones where the axis is short.', () => {
  expect(logAxis([1, 100]).ticks).toEqual([1, 2, 5, 10, 20, 50, 100]);
  expect(logAxis([0.5, 24]).ticks).toEqual([0.5, 1, 2, 5, 10, 20]);
  expect(logAxis([12, 18]).ticks).toEqual([15, 20]);
});

test('Every value stands on its axis, nothing and less at its foot, and there are always ticks.', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 20 }),
      (values) => {
        const axis = logAxis(values);
        expect(axis.ticks.length).toBeGreaterThan(0);
        for (const value of values) {
          const share = shareOf(axis, value);
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(1);
        }
      },
    ),
  );
});

test('Equal factors are equal lengths.', () => {
  const axis = logAxis([1, 100]);
  expect(shareOf(axis, 4) - shareOf(axis, 2)).toBeCloseTo(shareOf(axis, 80) - shareOf(axis, 40), 12);
});
