import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lowerBound, selectAcross, upperBound } from './selection.ts';
import { draws } from './test-data/draws.ts';

const value = fc.oneof(
  fc.integer({ min: -3, max: 3 }),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  fc.constantFrom(0, 1e-300, 1e300, -1e300),
);
const samples = fc.array(
  fc.array(value, { maxLength: 60 }).map((values) => Float64Array.from(values).sort()),
  { minLength: 1, maxLength: 20 },
);

describe('the value of a rank across sorted samples', () => {
  test('is what merging and sorting would give', () => {
    fc.assert(
      fc.property(samples, fc.nat(), (own, pick) => {
        const merged = Float64Array.from(own.flatMap((sample) => [...sample])).sort();
        fc.pre(merged.length > 0);
        const rank = (pick % merged.length) + 1;
        expect(selectAcross(own, rank)).toBe(merged[rank - 1]);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });

  test('is found among many values, equal ones too', () => {
    const draw = draws('selection');
    const own = Array.from({ length: 50 }, () =>
      Float64Array.from({ length: 400 }, () => Math.floor(1000 * draw())).sort(),
    );
    own.push(new Float64Array(5000).fill(500));
    const merged = Float64Array.from(own.flatMap((sample) => [...sample])).sort();
    for (const rank of [1, 2, 1000, 9_000, 10_000, 15_000, 24_999, 25_000]) {
      expect(selectAcross(own, rank)).toBe(merged[rank - 1]);
    }
  });
});

describe('the bounds of a value in a sorted sample', () => {
  test('count the values below it and up to it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 9 })),
        fc.integer({ min: -1, max: 10 }),
        (values, pivot) => {
          const sample = Float64Array.from(values).sort();
          expect(lowerBound(sample, pivot)).toBe(values.filter((own) => own < pivot).length);
          expect(upperBound(sample, pivot, 0, sample.length)).toBe(
            values.filter((own) => own <= pivot).length,
          );
        },
      ),
      { seed: 2 },
    );
  });
});
