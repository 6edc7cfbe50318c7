import { describe, expect, it } from 'vitest';
import {
  kolmogorovCritical,
  kolmogorovCumulative,
  kolmogorovLimit,
  kolmogorovTest,
  twoSampleKolmogorov,
} from './kolmogorov.ts';

describe('Kolmogorov’s distribution', () => {
  it('has the values of its paper', () => {
    // Source: G. Marsaglia, W. W. Tsang and J. Wang 2003.
    expect(kolmogorovCumulative(10, 0.274)).toBeCloseTo(0.6284796155, 9);
    expect(kolmogorovCumulative(2000, 0.04)).toBeCloseTo(0.9967694319, 9);
  });

  it.each([
    [0.05, 5, 0.5632751984],
    [0.05, 10, 0.4092460848],
    [0.05, 15, 0.3375961365],
    [0.05, 20, 0.2940753144],
    [0.05, 25, 0.2640413902],
    [0.05, 30, 0.2417034706],
    [0.05, 35, 0.2242465789],
    [0.05, 40, 0.2101151737],
    [0.05, 50, 0.1884064792],
    [0.05, 100, 0.1340279165],
    [0.01, 10, 0.4889316594],
    [0.01, 20, 0.3524108916],
    [0.01, 50, 0.2260370607],
    [0.1, 10, 0.3686616742],
    [0.1, 20, 0.2647305722],
    [0.1, 50, 0.1695915472],
  ])('has the critical values of the table: level %s, %s values', (alpha, n, expected) => {
    // Source: F. J. Massey, Journal of the American Statistical Association 46 (1951), 68–78; recomputed exactly.
    expect(kolmogorovCritical(n, alpha)).toBeCloseTo(expected, 8);
  });

  it('has its limit', () => {
    expect(kolmogorovLimit(0.05)).toBeCloseTo(1.358098639, 8);
  });
});

describe('kolmogorovTest and twoSampleKolmogorov', () => {
  it('agree with worked numbers', () => {
    // Source: made-up data, ks.test of R.
    const values = [0.108, 0.112, 0.204, 0.35, 0.422, 0.475, 0.603, 0.727, 0.912, 0.943];
    const one = kolmogorovTest(values, (value) => value);
    expect(one.distance).toBeCloseTo(0.125, 12);
    expect(one.pValue).toBeCloseTo(0.991773943, 8);
    const two = twoSampleKolmogorov([1.2, 2.3, 3.1, 4.8, 5, 6.7], [2.9, 4.1, 5.6, 7.7, 8.2, 9.9, 10.4]);
    expect(two.distance).toBeCloseTo(0.5714285714, 9);
    expect(two.pValue).toBeCloseTo(0.1468531469, 9);
  });

  it('go over from the exact law to its limit without a step', () => {
    const uniform = (n: number): number[] =>
      Array.from({ length: n }, (_, index) => ((index + 0.5) / n) ** 1.05);
    const exact = kolmogorovTest(uniform(1000), (value) => value).pValue;
    const limit = kolmogorovTest(uniform(1001), (value) => value).pValue;
    expect(Math.abs(exact - limit)).toBeLessThan(0.02);
  });
});
