import { describe, expect, it } from 'vitest';
import { dayParts } from './day-parts.ts';

const HOUR = 3_600_000;
const HOURS = { days: [0, 1, 2, 3, 4], fromHour: 7, toHour: 20, counted: 500 };

/** So many jobs in each hour from 7:00 on. */
function asked(counts: readonly number[]): number[] {
  return counts.flatMap((count, index) =>
    Array.from({ length: count }, (_, job) => (7 + index + (job + 0.5) / count) * HOUR),
  );
}

describe('dayParts', () => {
  it('finds the end of the morning and of the time in which most jobs are asked for', () => {
    const counts = [62, 58, 64, 57, 61, 41, 37, 42, 39, 9, 11, 10, 8];
    expect(dayParts(asked(counts), HOURS)).toEqual({ noon: 12, dayEnd: 16 });
    const early = [62, 58, 64, 20, 21, 19, 23, 18, 22, 20, 19, 21, 20];
    expect(dayParts(asked(early), HOURS)).toEqual({ noon: 10, dayEnd: 20 });
    const late = [40, 41, 38, 42, 40, 39, 41, 37, 42, 9, 11, 10, 8];
    expect(dayParts(asked(late), HOURS)).toEqual({ noon: 12, dayEnd: 16 });
  });

  it('divides at noon where the counts tell nothing', () => {
    expect(dayParts(asked([20, 22, 19, 21, 20, 18, 21, 22, 19, 20, 21, 18, 20]), HOURS)).toEqual({
      noon: 12,
      dayEnd: 20,
    });
    expect(dayParts([], HOURS)).toEqual({ noon: 12, dayEnd: 20 });
    expect(dayParts([], { ...HOURS, fromHour: 13, toHour: 21 })).toEqual({ noon: 17, dayEnd: 21 });
  });
});
