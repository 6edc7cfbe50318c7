import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { IntervalBins } from './interval-bins.ts';

describe('IntervalBins', () => {
  it('spreads an interval over the bins it lies in', () => {
    const bins = new IntervalBins(100, 10, 4);
    bins.add(105, 132, 1);
    bins.add(111, 113, 2);
    expect([...bins.totals()]).toEqual([5, 14, 10, 2]);
  });

  it('counts only what lies within the bins', () => {
    const bins = new IntervalBins(100, 10, 2);
    bins.add(50, 105, 1);
    bins.add(115, 500, 1);
    bins.add(0, 90, 1);
    bins.add(130, 140, 1);
    bins.add(0, 1000, 2);
    expect([...bins.totals()]).toEqual([25, 25]);
  });

  it('gives a bin its start and not its end', () => {
    const bins = new IntervalBins(0, 10, 3);
    bins.add(10, 20, 1);
    expect([...bins.totals()]).toEqual([0, 10, 0]);
    bins.add(20, 20, 1);
    bins.add(25, 22, 1);
    expect([...bins.totals()]).toEqual([0, 10, 0]);
  });

  it('forgets everything when it is cleared', () => {
    const bins = new IntervalBins(0, 10, 3);
    bins.add(3, 27, 5);
    bins.clear();
    expect([...bins.totals()]).toEqual([0, 0, 0]);
  });

  it('agrees with adding up unit by unit, exactly for whole numbers', () => {
    const interval = fc.tuple(
      fc.integer({ min: -30, max: 150 }),
      fc.integer({ min: 0, max: 120 }),
      fc.integer({ min: -4, max: 9 }),
    );
    fc.assert(
      fc.property(
        fc.array(interval),
        fc.integer({ min: 1, max: 17 }),
        fc.integer({ min: 1, max: 9 }),
        (list, width, count) => {
          const bins = new IntervalBins(7, width, count);
          const expected = new Float64Array(count);
          for (const [from, length, weight] of list) {
            bins.add(from, from + length, weight);
            for (let unit = from; unit < from + length; unit++) {
              const bin = Math.floor((unit - 7) / width);
              if (bin >= 0 && bin < count) expected[bin] = (expected[bin] ?? 0) + weight;
            }
          }
          expect([...bins.totals()]).toEqual([...expected]);
        },
      ),
      { seed: 1, numRuns: 500 },
    );
  });

  it('keeps the total as exact as doubles allow when weights are shares of a job', () => {
    // A week in milliseconds, shares such as 3 of 7 pieces.
    const width = 604_800_000;
    const interval = fc.tuple(
      fc.integer({ min: 0, max: 52 * width }),
      fc.integer({ min: 0, max: 52 * width }),
      fc.integer({ min: 1, max: 12 }),
      fc.integer({ min: 12, max: 13 }),
    );
    fc.assert(
      fc.property(fc.array(interval, { maxLength: 200 }), (list) => {
        const bins = new IntervalBins(0, width, 52);
        let exact = 0n;
        for (const [a, b, pieces, of] of list) {
          const [from, to] = [Math.min(a, b), Math.max(a, b)];
          bins.add(from, to, pieces / of);
          exact += BigInt(to - from) * BigInt(pieces) * (of === 12 ? 13n : 12n);
        }
        const total = bins.totals().reduce((sum, value) => sum + value, 0);
        const expected = Number(exact) / 156;
        expect(Math.abs(total - expected)).toBeLessThanOrEqual(expected * 1e-14);
      }),
      { seed: 2, numRuns: 200 },
    );
  });
});
