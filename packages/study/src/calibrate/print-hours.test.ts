import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printHoursOf } from './print-hours.ts';

describe('printHoursOf', () => {
  it.each([
    ['5', 5],
    ['5.25', 5.25],
    ['5,25', 5.25],
    ['5:20', 5 + 20 / 60],
    ['105:07', 105 + 7 / 60],
    ['5:20:30', 5 + 20 / 60 + 30 / 3600],
    ['5h', 5],
    ['5 h 20 min', 5 + 20 / 60],
    ['5h20m', 5 + 20 / 60],
    ['1 day 3.5 hours', 27.5],
    ['320 min', 320 / 60],
    ['1 H 1 MIN 36 S', 1 + 1 / 60 + 36 / 3600],
  ])('reads %s', (text, hours) => {
    expect(printHoursOf(text)).toBeCloseTo(hours, 12);
  });

  it.each([
    '',
    'h',
    '-5',
    '5:60',
    '5:2',
    '5.3.1',
    '1.234,5',
    '5 h 20',
    '20 min 5 h',
    '5 h 6 h',
    '5 years',
    '1e3',
    'overnight',
  ])('takes "%s" for no time', (text) => {
    expect(printHoursOf(text)).toBeNull();
  });

  it('reads every way of writing whole minutes as the same hours', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 59 }), (hours, minutes) => {
        const expected = hours + minutes / 60;
        const clock = `${hours}:${String(minutes).padStart(2, '0')}`;
        for (const text of [clock, `${hours} h ${minutes} min`, `${60 * hours + minutes} min`]) {
          expect(printHoursOf(text)).toBeCloseTo(expected, 9);
        }
      }),
      { seed: 20270301 },
    );
  });
});
