import { describe, expect, test } from 'vitest';
import { chiSquareQuantile, gammaQuantile } from './gamma-quantile.ts';

const DEGREES = [1, 2, 5, 9, 10, 19, 20, 50, 100];

describe('quantiles of chi-square', () => {
  // Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, recomputed with R.
  const published: [number, number[]][] = [
    [
      0.95,
      [
        3.84145882069412, 5.99146454710798, 11.0704976935164, 16.9189776046204, 18.3070380532751,
        30.1435272056462, 31.4104328442309, 67.5048065495412, 124.342113404004,
      ],
    ],
    [
      0.975,
      [
        5.02388618731488, 7.37775890822787, 12.83250199403, 19.0227677986416, 20.4831773508074,
        32.8523268617297, 34.1696069028383, 71.4201951875064, 129.561197185837,
      ],
    ],
    [
      0.025,
      [
        0.000982069117175256, 0.0506356159685798, 0.831211613486663, 2.70038949998036, 3.24697278023684,
        8.90651648198797, 9.59077739226487, 32.3573636956587, 74.2219274749237,
      ],
    ],
    [
      0.05,
      [
        0.00393214000001952, 0.102586588775101, 1.14547622606177, 3.32511284306681, 3.94029913611906,
        10.117013063859, 10.8508113941826, 34.7642516835018, 77.9294651650173,
      ],
    ],
  ];
  test.each(published)('have the published values at p = %s', (p, expected) => {
    DEGREES.forEach((degrees, index) => {
      expect(Math.abs(chiSquareQuantile(p, degrees) / (expected[index] ?? 0) - 1)).toBeLessThan(1e-9);
    });
  });

  test('refuse what cannot be', () => {
    expect(() => chiSquareQuantile(0.5, 0)).toThrow(/degrees of freedom/);
    expect(() => chiSquareQuantile(1, 3)).toThrow(/probability/);
  });
});

describe('quantiles of the gamma distribution', () => {
  test('give 5.815 as the 95 % point of mean 3 and squared variation 1/4', () => {
    // Source: elementary; recomputed with R.
    expect(0.75 * gammaQuantile(0.95, 4)).toBeCloseTo(5.81524239594954, 9);
  });

  // Source: recomputed with scipy 1.17.
  test.each([
    [1e-6, 6.749697893111697e-25],
    [0.5, 0.0436738023528734],
    [0.999, 4.3764442578866865],
  ])('hold for a density that is unbounded at zero: p = %s', (p, expected) => {
    expect(Math.abs(gammaQuantile(p, 0.25) / expected - 1)).toBeLessThan(1e-9);
  });

  test('refuse what cannot be', () => {
    expect(() => gammaQuantile(-0.1, 1)).toThrow(/probability/);
    expect(() => gammaQuantile(0.5, -1)).toThrow(/shape/);
    expect(() => gammaQuantile(0.5, Number.POSITIVE_INFINITY)).toThrow(/shape/);
  });
});
