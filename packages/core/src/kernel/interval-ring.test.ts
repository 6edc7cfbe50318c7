import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MILLISECONDS_PER_HOUR as HOUR } from './clock.ts';
import { addStay, IntervalRing } from './interval-ring.ts';
import { createLocalTime } from './local-time.ts';

describe('IntervalRing', () => {
  it('goes round the end of the ring', () => {
    const ring = new IntervalRing(10, 4);
    ring.add(35, 52, 1);
    expect([...ring.totals()]).toEqual([10, 2, 0, 5]);
  });

  it('goes round any number of times', () => {
    const ring = new IntervalRing(10, 4);
    ring.add(5, 5 + 3 * 40 + 10, 2);
    expect([...ring.totals()]).toEqual([70, 70, 60, 60]);
  });

  it('takes times before the beginning of the ring', () => {
    const ring = new IntervalRing(10, 4);
    ring.add(-15, -5, 1);
    expect([...ring.totals()]).toEqual([0, 0, 5, 5]);
  });

  it('forgets everything when it is cleared', () => {
    const ring = new IntervalRing(10, 4);
    ring.add(3, 127, 5);
    ring.clear();
    expect([...ring.totals()]).toEqual([0, 0, 0, 0]);
  });

  it('agrees with adding up unit by unit, exactly for whole numbers', () => {
    const interval = fc.tuple(
      fc.integer({ min: -50, max: 100 }),
      fc.integer({ min: 0, max: 200 }),
      fc.integer({ min: -4, max: 9 }),
    );
    fc.assert(
      fc.property(
        fc.array(interval),
        fc.integer({ min: 1, max: 11 }),
        fc.integer({ min: 1, max: 7 }),
        (list, width, count) => {
          const ring = new IntervalRing(width, count);
          const expected = new Float64Array(count);
          for (const [from, length, weight] of list) {
            ring.add(from, from + length, weight);
            for (let unit = from; unit < from + length; unit++) {
              const turn = Math.floor(unit / width) % count;
              const bin = turn < 0 ? turn + count : turn;
              expected[bin] = (expected[bin] ?? 0) + weight;
            }
          }
          expect([...ring.totals()]).toEqual([...expected]);
        },
      ),
      { seed: 1, numRuns: 1000 },
    );
  });
});

describe('addStay', () => {
  // Berlin, March and October 2025 (IANA time zone database); plans start on the Monday before.
  const hoursOf = (localMinusElapsedHours: number, atHours: number, from: number, to: number): number[] => {
    const ring = new IntervalRing(HOUR, 168);
    addStay(ring, createLocalTime([{ atHours, localMinusElapsedHours }]), from * HOUR, to * HOUR, 1);
    return [...ring.totals()].map((total) => total / HOUR);
  };

  it('gives nothing to the hour that the clock skips', () => {
    const hours = hoursOf(1, 146, 145.5, 147.5);
    expect(hours.slice(144, 150)).toEqual([0, 0.5, 0, 1, 0.5, 0]);
  });

  it('gives both to the hour that the clock shows twice', () => {
    const hours = hoursOf(-1, 147, 145.5, 149.25);
    expect(hours.slice(144, 150)).toEqual([0, 0.5, 2, 1, 0.25, 0]);
  });

  it('adds the elapsed length of the stay, whatever the clock does', () => {
    const time = fc.integer({ min: 0, max: 400 * HOUR });
    fc.assert(
      fc.property(time, time, fc.integer({ min: 1, max: 300 }), fc.constantFrom(-1, 1), (a, b, at, jump) => {
        const ring = new IntervalRing(HOUR, 168);
        const changes = [
          { atHours: at, localMinusElapsedHours: jump },
          { atHours: at + 40, localMinusElapsedHours: 0 },
        ];
        addStay(ring, createLocalTime(changes), Math.min(a, b), Math.max(a, b), 3);
        expect(ring.totals().reduce((sum, total) => sum + total, 0)).toBe(3 * Math.abs(a - b));
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});
