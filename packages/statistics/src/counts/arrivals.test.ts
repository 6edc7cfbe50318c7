import { describe, expect, it } from 'vitest';
import { draws } from '../test-data/draws.ts';
import { shrunkenRates } from './gamma-poisson.ts';
import { type ArrivalBlock, poissonArrivalsTest, roundingUnit, unrounded } from './poisson-arrivals.ts';

/** Poisson arrivals of a rate over one block. */
function poisson(rate: number, from: number, to: number, draw: () => number): ArrivalBlock {
  const times: number[] = [];
  let time = from;
  while (time < to) {
    time -= Math.log(draw()) / rate;
    if (time < to) times.push(time);
  }
  return { from, to, times };
}

/** Forty days, busy in the morning and calm in the afternoon. */
function days(draw: () => number, arrive: typeof poisson = poisson): ArrivalBlock[] {
  return Array.from({ length: 40 }, (_, day) => [
    arrive(1.5, 24 * day + 8, 24 * day + 12, draw),
    arrive(0.5, 24 * day + 12, 24 * day + 18, draw),
  ]).flat();
}

describe('poissonArrivalsTest', () => {
  it('raises as many false alarms as its level says', () => {
    // Binomial bounds for 400 tests at 5 %, 99.9 %: 7 to 36.
    const draw = draws('false alarms');
    const alarms = Array.from({ length: 400 }, () => poissonArrivalsTest(days(draw)).pValue).filter(
      (p) => p < 0.05,
    );
    expect(alarms.length).toBeGreaterThanOrEqual(7);
    expect(alarms.length).toBeLessThanOrEqual(36);
  });

  it('finds arrivals that come in pairs, and arrivals that come too evenly', () => {
    const paired = days(draws('pairs')).map((block) => ({
      ...block,
      times: block.times.flatMap((time) => [time, time + 0.01]),
    }));
    expect(poissonArrivalsTest(paired).pValue).toBeLessThan(1e-6);
    const even = days(draws('even')).map((block) => ({
      ...block,
      times: block.times.map(
        (_, index, all) => block.from + ((index + 0.5) / all.length) * (block.to - block.from),
      ),
    }));
    expect(poissonArrivalsTest(even).pValue).toBeLessThan(1e-6);
  });

  it('takes times that were rounded to the hour for clusters, unless they are spread over it again', () => {
    const draw = draws('rounding');
    const rounded = days(draw).map((block) => ({ ...block, times: block.times.map(Math.floor) }));
    expect(poissonArrivalsTest(rounded).pValue).toBeLessThan(0.001);
    const spread = rounded.map((block) => ({ ...block, times: unrounded(block.times, 1, draw) }));
    expect(poissonArrivalsTest(spread).pValue).toBeGreaterThan(0.01);
  });

  it('has nothing to test in one arrival', () => {
    expect(() => poissonArrivalsTest([{ from: 0, to: 1, times: [0.5] }])).toThrow(RangeError);
  });
});

describe('roundingUnit', () => {
  it('is the largest unit of which nearly all times are multiples', () => {
    const units = [60, 15, 5, 1];
    expect(roundingUnit([60, 120, 180], units)).toBe(60);
    expect(roundingUnit([60, 75, 90, 30], units)).toBe(15);
    expect(roundingUnit([61, 75, 90, 30], units)).toBe(1);
  });
});

describe('shrunkenRates', () => {
  it('draws rates together that counts cannot tell apart, and leaves those that they can', () => {
    const alike = shrunkenRates(
      [9, 11, 10, 12].map((count) => ({ count, exposure: 10 })),
      0.95,
    );
    for (const { value } of alike) expect(Math.abs(value - 1.05)).toBeLessThan(0.02);
    const apart = shrunkenRates(
      [2, 200].map((count) => ({ count, exposure: 10 })),
      0.95,
    );
    expect(apart[0]?.value).toBeLessThan(0.6);
    expect(apart[1]?.value).toBeGreaterThan(19);
  });

  it('says less with fewer counts', () => {
    const [long, short] = shrunkenRates(
      [
        { count: 300, exposure: 100 },
        { count: 1, exposure: 0.3 },
      ],
      0.95,
    );
    if (long === undefined || short === undefined) throw new Error('rates are missing');
    expect(long.high - long.low).toBeLessThan(0.8);
    expect(short.high - short.low).toBeGreaterThan(long.high - long.low);
  });

  it('is 0 where nothing came', () => {
    expect(shrunkenRates([{ count: 0, exposure: 5 }], 0.95)).toEqual([
      { value: 0, low: 0, high: 0, level: 0.95 },
    ]);
  });
});
