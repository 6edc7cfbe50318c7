import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clockTicks, midnights } from './clock-axis.ts';

test('Ticks stand at full hours by the clock, with the day at its first tick.', () => {
  expect(clockTicks(9, 24, 600, 'wide')).toMatchObject([
    { offset: 1, time: '10:00', day: 'Mon' },
    { offset: 3, time: '12:00', day: '' },
    ...Array.from({ length: 5 }, () => ({ day: '' })),
    { offset: 15, time: '00:00', day: 'Tue' },
    ...Array.from({ length: 4 }, () => ({ day: '' })),
  ]);
});

test('A week that ends is followed by its next Monday.', () => {
  const ticks = clockTicks(111, 70, 200, 'wide');
  expect(ticks.map(({ time, day }) => `${day} ${time}`)).toEqual(['Sat 00:00', 'Sun 00:00', 'Mon 00:00']);
});

test('Ticks are never closer than their labels, whatever the length.', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 7 * 24 * 60 }),
      fc.double({ min: 0.5, max: 2000, noNaN: true }),
      fc.constantFrom('wide' as const, 'narrow' as const),
      (minutes, hours, size) => {
        const width = 300;
        const offsets = clockTicks(minutes / 60, hours, width, size).map((tick) => tick.offset);
        offsets.slice(1).forEach((offset, index) => {
          expect(((offset - (offsets[index] ?? 0)) / hours) * width).toBeGreaterThanOrEqual(39.9);
        });
        for (const offset of offsets) {
          expect(offset).toBeGreaterThanOrEqual(0);
          expect(offset).toBeLessThanOrEqual(hours);
        }
      },
    ),
  );
});

test('Midnights are those after the moment of asking.', () => {
  expect(midnights(9, 40)).toEqual([15, 39]);
  expect(midnights(24, 24)).toEqual([]);
});
