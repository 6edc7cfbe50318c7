import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { unattendedSpans, unitedWeek } from './unattended-hours.ts';

describe('the hours in which a machine may run alone', () => {
  it('are always, never, the same hours of some days, or from one day to another', () => {
    expect(unattendedSpans('always')).toBeNull();
    expect(unattendedSpans('never')).toEqual([]);
    expect(unattendedSpans('mon-tue 16:00-07:00')).toEqual([
      { fromHour: 16, toHour: 31 },
      { fromHour: 40, toHour: 55 },
    ]);
    expect(unattendedSpans('sat 08:00-12:00')).toEqual([{ fromHour: 128, toHour: 132 }]);
    expect(unattendedSpans('fri 16:00 to mon 07:00')).toEqual([{ fromHour: 112, toHour: 175 }]);
    expect(unattendedSpans('daily 00:00-24:00')).toHaveLength(7);
  });

  it.each([
    ['nights', 'mon-thu 16:00-07:00'],
    ['mon-fri', 'mon-thu 16:00-07:00'],
    ['mon-fri 16:00 to mon 07:00', 'fri 16:00 to mon 07:00'],
    ['mnn 16:00-07:00', 'mon 16:00-07:00'],
    ['mon 25:00-26:00', 'mon 14:00-26:00'],
  ])('refuse "%s" and say what to write', (text, write) => {
    expect(refusal(unattendedSpans, text).write).toBe(write);
  });
});

describe('hours of the week put together', () => {
  it('have one stretch for what overlaps or touches, and two for what reaches over Sunday', () => {
    expect(
      unitedWeek([
        { fromHour: 16, toHour: 31 },
        { fromHour: 31, toHour: 40 },
        { fromHour: 20, toHour: 22 },
      ]),
    ).toEqual([{ fromHour: 16, toHour: 40 }]);
    expect(unitedWeek([{ fromHour: 112, toHour: 175 }])).toEqual([
      { fromHour: 0, toHour: 7 },
      { fromHour: 112, toHour: 168 },
    ]);
  });

  it('are always when they leave nothing out, and none when there are none', () => {
    const days = Array.from({ length: 7 }, (_, day) => ({ fromHour: day * 24, toHour: day * 24 + 24 }));
    expect(unitedWeek(days)).toBeNull();
    expect(unitedWeek([])).toEqual([]);
  });

  it('cover each hour that one of the stretches covers, and no other', () => {
    const span = fc
      .tuple(fc.integer({ min: 0, max: 167 }), fc.integer({ min: 1, max: 167 }))
      .map(([fromHour, length]) => ({ fromHour, toHour: fromHour + length }));
    fc.assert(
      fc.property(fc.array(span, { maxLength: 8 }), (spans) => {
        const united = unitedWeek(spans) ?? [{ fromHour: 0, toHour: 168 }];
        for (let hour = 0; hour < 168; hour++) {
          const isIn = (list: readonly { fromHour: number; toHour: number }[], at: number): boolean =>
            list.some((candidate) => candidate.fromHour <= at && at < candidate.toHour);
          expect(isIn(united, hour)).toBe(isIn(spans, hour) || isIn(spans, hour + 168));
        }
        for (const [index, one] of united.entries()) {
          const next = united[index + 1];
          expect(one.fromHour < one.toHour && (next === undefined || one.toHour < next.fromHour)).toBe(true);
        }
      }),
    );
  });
});
