import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spreadLabels } from './spread-labels.ts';

test('Labels with room enough stay where they are.', () => {
  expect(spreadLabels([10, 60, 30], 15, 100)).toEqual([10, 60, 30]);
});

test('Labels that would cover each other move apart by as much, in their order, and stay in their room.', () => {
  expect(spreadLabels([50, 51, 10], 15, 100)).toEqual([43, 58, 10]);
  expect(spreadLabels([98, 99], 15, 100)).toEqual([85, 100]);
});

test('Labels never stand closer than asked, above the top, or below the bottom where there is room for all.', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { maxLength: 16 }), (wanted) => {
      const placed = spreadLabels(wanted, 17, 300).sort((one, other) => one - other);
      placed.slice(1).forEach((place, index) => {
        expect(place - (placed[index] ?? 0)).toBeGreaterThanOrEqual(17 - 1e-9);
      });
      for (const place of placed) {
        expect(place).toBeGreaterThanOrEqual(-1e-9);
        expect(place).toBeLessThanOrEqual(300 + 1e-9);
      }
    }),
  );
});
