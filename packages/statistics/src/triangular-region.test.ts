import { describe, expect, test } from 'vitest';
import { oneSidedRegion, regionHalfWidth, twoSidedRegion } from './triangular-region.ts';

describe('the constants of a triangular region', () => {
  // Source: S.-H. Kim and B. L. Nelson, ACM Transactions on Modeling and Computer Simulation 11 (2001), 251–273, and
  // their chapter in the handbook of 2006 (closed form, recomputed).
  test.each([
    [2, 10, 0.05, 0.3340502686000293, 6.012904834800527],
    [5, 10, 0.05, 0.6349672651536731, 11.429410772766115],
    [10, 10, 0.05, 0.8590834299248991, 15.463501738648183],
    [10, 20, 0.05, 0.3029338036492749, 11.511484538672446],
    [20, 20, 0.1, 0.3075165584410602, 11.685629220760287],
    [100, 24, 0.05, 0.41087759806424706, 18.900369510955365],
  ])(
    'for the best of %i with a first stage of %i and alpha %d are the published ones',
    (k, n0, alpha, eta, h) => {
      const region = twoSidedRegion(n0, alpha / (k - 1));
      expect(region.eta).toBeCloseTo(eta, 13);
      expect(region.hSquared).toBeCloseTo(h, 11);
    },
  );

  // Source: as above.
  test('for the best of ten independent systems are the published ones', () => {
    const region = twoSidedRegion(10, 1 - 0.95 ** (1 / 9));
    expect(region.eta).toBeCloseTo(0.8522482524153159, 13);
    expect(region.hSquared).toBeCloseTo(15.340468543475685, 11);
  });

  // Source: S. Andradóttir and S.-H. Kim, Naval Research Logistics 57 (2010), 403–421; D. Batur and S.-H. Kim, ACM
  // Transactions on Modeling and Computer Simulation 20 (2010) (closed form; formula from memory).
  test.each([
    [1, 10, 0.3340502686000292, 0.3340502686000293],
    [5, 20, 0.25314016586377264, 0.2547601326950498],
    [20, 20, 0.37111374675490916, 0.3733406762343062],
  ])(
    'for the feasibility of %i systems with a first stage of %i are the published ones',
    (k, n0, own, bonferroni) => {
      expect(twoSidedRegion(n0, 1 - 0.95 ** (1 / k)).eta).toBeCloseTo(own, 13);
      expect(twoSidedRegion(n0, 0.05 / k).eta).toBeCloseTo(bonferroni, 13);
    },
  );

  test('of one side alone are those of two sides at half the error', () => {
    expect(oneSidedRegion(15, 0.02)).toEqual(twoSidedRegion(15, 0.01));
  });

  test('make a region that closes in a straight line and stays closed', () => {
    // (0.5 / 2) (8 · 2 / 0.25 − r) = 16 − r / 4.
    expect([0, 10, 64, 65].map((count) => regionHalfWidth(8, 2, 0.5, count))).toEqual([16, 13.5, 0, 0]);
    expect(regionHalfWidth(8, 0, 0.5, 10)).toBe(0);
  });

  test('are refused where they do not exist', () => {
    expect(() => twoSidedRegion(1, 0.05)).toThrow('first stage');
    expect(() => twoSidedRegion(10.5, 0.05)).toThrow('first stage');
    expect(() => twoSidedRegion(10, 0.5)).toThrow('error level');
    expect(() => oneSidedRegion(10, 1)).toThrow('error level');
    expect(() => oneSidedRegion(10, 0)).toThrow('error level');
  });
});
