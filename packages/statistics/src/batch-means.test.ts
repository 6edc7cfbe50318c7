import { describe, expect, test } from 'vitest';
import { batchMeans } from './batch-means.ts';
import { standardError } from './summary.ts';
import { NILE } from './test-data/nile.ts';

describe('batch means', () => {
  // Source: R data set Nile; recomputed.
  test('more than double the standard error of a series in which a value resembles the one before', () => {
    expect(standardError(batchMeans(NILE, 10))).toBeCloseTo(36.5553438865874, 11);
    expect(standardError(NILE)).toBeCloseTo(16.9227500630651, 11);
  });

  test('leave out an incomplete last batch', () => {
    expect([...batchMeans([1, 3, 5, 7, 100], 2)]).toEqual([2, 6]);
    expect([...batchMeans([1, 3], 1)]).toEqual([1, 3]);
  });

  test('are refused for sizes that cannot be', () => {
    for (const size of [0, 1.5, 4, Number.NaN]) expect(() => batchMeans([1, 2, 3], size)).toThrow(RangeError);
  });
});
