import type { ClockChange, ProfileSpan } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MILLISECONDS_PER_HOUR as HOUR, HOURS_PER_WEEK, MILLISECONDS_PER_WEEK as WEEK } from './clock.ts';
import { createLocalTime } from './local-time.ts';
import { PiecewiseArrivals } from './piecewise-arrivals.ts';
import { createStream } from './streams.ts';

const WEEKDAYS = [0, 1, 2, 3, 4];

interface Setting {
  readonly perWeek: number;
  readonly profile: readonly ProfileSpan[] | null;
  readonly growthPerMonth: number;
  readonly changes: readonly ClockChange[];
}

const PLAIN: Setting = { perWeek: 56.4, profile: null, growthPerMonth: 0, changes: [] };

function open(setting: Partial<Setting>): PiecewiseArrivals {
  const { perWeek, profile, growthPerMonth, changes } = { ...PLAIN, ...setting };
  return new PiecewiseArrivals(
    { kind: 'poisson', perWeek, profile, growthPerMonth, jobsPerArrival: { kind: 'fixed', value: 1 } },
    createLocalTime(changes),
  );
}

function profileOf(rate: (localHour: number) => number): ProfileSpan[] {
  return Array.from({ length: HOURS_PER_WEEK }, (_, hour) => ({
    fromHour: hour,
    toHour: hour + 1,
    weight: rate(hour),
  })).filter((span) => span.weight > 0);
}

/** Case S23 of the collected checks: Monday to Friday 08-12 at 1.5/h, 12-16 at 1.0/h, else 0.05/h. */
const S23_PROFILE: readonly ProfileSpan[] = [
  ...WEEKDAYS.flatMap((day) => [
    { fromHour: day * 24, toHour: day * 24 + 8, weight: 0.05 },
    { fromHour: day * 24 + 8, toHour: day * 24 + 12, weight: 1.5 },
    { fromHour: day * 24 + 12, toHour: day * 24 + 16, weight: 1 },
    { fromHour: day * 24 + 16, toHour: day * 24 + 24, weight: 0.05 },
  ]),
  { fromHour: 120, toHour: 168, weight: 0.05 },
];

/** The draw that makes the next arrival come after exactly so many expected arrivals. */
const after = (expected: number): number => -Math.expm1(-expected);

/** Hours at which the expected number of arrivals since the start of the plan reaches a number. */
function hourAt(setting: Partial<Setting>, expected: number): number {
  const arrivals = open(setting);
  // In steps, because a draw close to 1 has few digits left.
  const steps = Math.ceil(expected / 4);
  let time = 0;
  for (let step = 0; step < steps; step++) time = arrivals.next(after(expected / steps));
  return time / HOUR;
}

describe('PiecewiseArrivals', () => {
  it('reaches the published expectations at the hours they belong to', () => {
    // Case S23 of the collected checks (Lewis & Shedler 1979; elementary): 56.4 expected in a week; no arrival
    // on Monday 08-09 with probability 0.22313016014843, from an expectation of 1.5; 2.5 on Monday 11-13.
    const setting = { profile: S23_PROFILE };
    expect(hourAt(setting, 56.4 - 0.05)).toBeCloseTo(167, 8);
    expect(hourAt(setting, 56.4 + 0.4 + 1.5)).toBeCloseTo(168 + 9, 8);
    expect(hourAt(setting, 0.4)).toBeCloseTo(8, 9);
    const eight = open(setting);
    eight.next(after(0.4));
    expect(eight.next(1 - 0.22313016014843) / HOUR).toBeCloseTo(9, 9);
    expect(hourAt(setting, 0.4 + 4.5)).toBeCloseTo(11, 9);
    expect(hourAt(setting, 0.4 + 4.5 + 2.5)).toBeCloseTo(13, 9);
  });

  it('takes weights as relative and the rate per week as the sum', () => {
    const doubled = S23_PROFILE.map((span) => ({ ...span, weight: span.weight * 7 }));
    for (const expected of [0.2, 5, 30, 100]) {
      expect(hourAt({ profile: doubled }, expected)).toBeCloseTo(
        hourAt({ profile: S23_PROFILE }, expected),
        8,
      );
    }
  });

  it('passes over the hours that have no rate', () => {
    const profile = [
      { fromHour: 8, toHour: 10, weight: 1 },
      { fromHour: 100, toHour: 102, weight: 1 },
    ];
    const setting = { perWeek: 4, profile };
    expect(hourAt(setting, 1)).toBeCloseTo(9, 9);
    expect(hourAt(setting, 2.5)).toBeCloseTo(100.5, 9);
    expect(hourAt(setting, 3.5)).toBeCloseTo(101.5, 9);
    expect(hourAt(setting, 4.5)).toBeCloseTo(168 + 8.5, 9);
    const stream = createStream('spring', 0, 'arrivals', 'profile');
    const arrivals = open(setting);
    for (let arrival = 0; arrival < 3000; arrival++) {
      const hour = (arrivals.next(stream()) / HOUR) % 168;
      expect((hour >= 8 && hour <= 10) || (hour >= 100 && hour <= 102)).toBe(true);
    }
  });

  it('carries a span that runs over the end of the week into the next', () => {
    const setting = { perWeek: 8, profile: [{ fromHour: 164, toHour: 172, weight: 1 }] };
    expect(hourAt(setting, 1)).toBeCloseTo(1, 9);
    expect(hourAt(setting, 5)).toBeCloseTo(165, 9);
  });

  it('adds the weights of spans that overlap', () => {
    const profile = [
      { fromHour: 0, toHour: 4, weight: 1 },
      { fromHour: 2, toHour: 4, weight: 2 },
    ];
    expect(hourAt({ perWeek: 8, profile }, 2)).toBeCloseTo(2, 9);
    expect(hourAt({ perWeek: 8, profile }, 5)).toBeCloseTo(3, 9);
  });

  it('grows by compound growth per month, applied week by week', () => {
    // 5 % a month of 365.25 / 12 days: week w has 1.05^(w · 7 · 12 / 365.25) times the first.
    const setting = { perWeek: 10, growthPerMonth: 0.05 };
    let expected = 0;
    for (let week = 0; week < 60; week++) {
      expected += 10 * 1.05 ** ((week * 7 * 12) / 365.25);
      expect(hourAt(setting, expected)).toBeCloseTo((week + 1) * 168, 6);
    }
    const middle = expected + (10 * 1.05 ** ((60 * 7 * 12) / 365.25)) / 2;
    expect(hourAt(setting, middle)).toBeCloseTo(60.5 * 168, 6);
  });

  it('ends when demand has shrunk to nothing, and never begins without any', () => {
    expect(open({ perWeek: 0 }).next(0.5)).toBe(Number.POSITIVE_INFINITY);
    // All weeks together bring 10 / (1 − 0.5^(12 · 7 / 365.25)) = 67.8 arrivals.
    const shrinking = open({ perWeek: 10, growthPerMonth: -0.5 });
    let arrivals = 0;
    while (shrinking.next(after(1)) < Number.POSITIVE_INFINITY) arrivals++;
    expect(arrivals).toBe(67);
    expect(shrinking.next(0.5)).toBe(Number.POSITIVE_INFINITY);
  });

  it('refuses a profile without any hour', () => {
    expect(() => open({ profile: [] })).toThrow(RangeError);
    expect(() => open({ profile: [{ fromHour: 0, toHour: 5, weight: 0 }] })).toThrow(RangeError);
  });

  it('brings nothing in the hour that the clock skips and twice as much in the one that it shows twice', () => {
    // Berlin in spring and autumn 2025 (IANA time zone database), one arrival an hour on Sundays 00-08.
    const profile = [{ fromHour: 144, toHour: 152, weight: 1 }];
    const spring = { perWeek: 8, profile, changes: [{ atHours: 146, localMinusElapsedHours: 1 }] };
    expect(hourAt(spring, 1.5)).toBeCloseTo(145.5, 9);
    expect(hourAt(spring, 2.5)).toBeCloseTo(146.5, 9);
    expect(hourAt(spring, 6.5)).toBeCloseTo(150.5, 9);
    expect(hourAt(spring, 7.5)).toBeCloseTo(168 + 144 - 1 + 0.5, 9);
    const autumn = { perWeek: 8, profile, changes: [{ atHours: 147, localMinusElapsedHours: -1 }] };
    expect(hourAt(autumn, 8.5)).toBeCloseTo(152.5, 9);
    expect(hourAt(autumn, 9.5)).toBeCloseTo(168 + 145 + 0.5, 9);
  });

  it('agrees with adding up the rate hour by hour, across clock changes too', () => {
    const weights = fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 168, maxLength: 168 });
    const changes = fc
      .tuple(fc.integer({ min: 1, max: 300 }), fc.constantFrom(-1, 1))
      .map(([atHours, localMinusElapsedHours]) => [{ atHours, localMinusElapsedHours }]);
    fc.assert(
      fc.property(
        weights,
        changes,
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        (perHour, clock, target) => {
          const total = perHour.reduce((sum, weight) => sum + weight, 0);
          fc.pre(total > 0);
          const localTime = createLocalTime(clock);
          const setting = { perWeek: 30, profile: profileOf((hour) => perHour[hour] ?? 0), changes: clock };
          const found = hourAt(setting, target);
          const rate = (elapsedHour: number): number =>
            ((perHour[Math.floor(localTime.toLocal(elapsedHour * HOUR) / HOUR) % 168] ?? 0) * 30) / total;
          // Clock changes fall on whole hours, so that the rate is constant within each elapsed hour.
          let expected = 0;
          for (let hour = 0; hour + 1 <= found; hour++) expected += rate(hour);
          expected += rate(Math.floor(found)) * (found - Math.floor(found));
          expect(expected).toBeCloseTo(target, 6);
        },
      ),
      { seed: 1, numRuns: 300 },
    );
  });

  it('gives counts in each part of the week that are Poisson with the expected mean', () => {
    // Fixed seed; 4,000 weeks. Mean and variance of the counts must lie within 4.05 standard errors of the
    // expectation (about one false alarm in 20,000 for each of the 14 comparisons).
    const weeks = 4000;
    const stream = createStream('spring', 0, 'arrivals', 'counts');
    const arrivals = open({ profile: S23_PROFILE });
    const parts: readonly (readonly [number, number, number])[] = [
      [0, 8, 0.4],
      [8, 9, 1.5],
      [8, 12, 6],
      [12, 16, 4],
      [11, 13, 2.5],
      [120, 168, 2.4],
      [0, 168, 56.4],
    ];
    const counts = parts.map(() => new Float64Array(weeks));
    for (let time = arrivals.next(stream()); time < weeks * WEEK; time = arrivals.next(stream())) {
      const week = Math.floor(time / WEEK);
      const hour = time / HOUR - week * 168;
      parts.forEach(([from, to], part) => {
        const weekly = counts[part];
        if (weekly !== undefined && from <= hour && hour < to) weekly[week] = (weekly[week] ?? 0) + 1;
      });
    }
    parts.forEach(([from, to, expected], part) => {
      const weekly = counts[part] ?? new Float64Array(0);
      const mean = weekly.reduce((sum, count) => sum + count, 0) / weeks;
      const variance = weekly.reduce((sum, count) => sum + (count - mean) ** 2, 0) / (weeks - 1);
      const what = `hours ${from} to ${to}`;
      expect(Math.abs(mean - expected) / Math.sqrt(expected / weeks), what).toBeLessThan(4.05);
      // Fourth central moment of a Poisson variable: m + 3 m²; so the variance has variance (m + 2 m²) / n.
      const deviation = Math.sqrt((expected + 2 * expected ** 2) / weeks);
      expect(Math.abs(variance - expected) / deviation, what).toBeLessThan(4.05);
    });
    // Case S23: three or more on Monday 11-13 with probability 0.45618688411667.
    const many = (counts[4] ?? new Float64Array(0)).filter((count) => count >= 3).length / weeks;
    const p = 0.45618688411667;
    expect(Math.abs(many - p) / Math.sqrt((p * (1 - p)) / weeks)).toBeLessThan(4.05);
  });
});
