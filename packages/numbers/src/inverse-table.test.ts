import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betaQuantile } from './beta-quantile.ts';
import { gammaQuantile } from './gamma-quantile.ts';
import { InverseTable } from './inverse-table.ts';

const draw = fc.integer({ min: 0, max: 2 ** 32 - 1 }).map((bits) => (bits + 0.5) / 2 ** 32);
const farDraw = fc
  .tuple(fc.double({ min: -32, max: -1, noNaN: true }), fc.boolean())
  .map(([exponent, upper]) => (upper ? 1 - 2 ** exponent : 2 ** exponent));
const u = fc.oneof(draw, farDraw);

const labels: readonly [string, (u: number) => number][] = [
  ['gamma of shape 0.25', (u) => gammaQuantile(u, 0.25)],
  ['gamma of shape 0.8', (u) => gammaQuantile(u, 0.8)],
  ['gamma of shape 2', (u) => gammaQuantile(u, 2)],
  ['gamma of shape 16', (u) => gammaQuantile(u, 16)],
  ['gamma of shape 400', (u) => gammaQuantile(u, 400)],
  ['beta 1.8, 4.2', (u) => betaQuantile(u, 1.8, 4.2)],
  ['beta 1, 5', (u) => betaQuantile(u, 1, 5)],
  ['beta 5, 1', (u) => betaQuantile(u, 5, 1)],
  ['beta 0.5, 0.5', (u) => betaQuantile(u, 0.5, 0.5)],
  ['exponential', (u) => -Math.log1p(-u)],
];

describe('a table of an inverse cumulative function', () => {
  test.each(labels)(
    'agrees with the function it was built from within 3e-4 of the value: %s',
    (_, inverse) => {
      const table = new InverseTable(inverse);
      fc.assert(
        fc.property(u, (at) => {
          const exact = inverse(at);
          expect(Math.abs(table.value(at) - exact)).toBeLessThanOrEqual(3e-4 * exact);
        }),
        { numRuns: 2000, seed: 1 },
      );
    },
  );

  test.each(labels)('never decreases: %s', (_, inverse) => {
    const table = new InverseTable(inverse, 512);
    fc.assert(
      fc.property(u, u, (first, second) => {
        const low = table.value(Math.min(first, second));
        const high = table.value(Math.max(first, second));
        expect(high).toBeGreaterThanOrEqual(low - 1e-14 * high);
      }),
      { numRuns: 2000, seed: 2 },
    );
  });

  test('reproduces a straight line to the last digits', () => {
    const table = new InverseTable((at) => 3 + 2 * at);
    fc.assert(
      fc.property(u, (at) => {
        expect(table.value(at)).toBeCloseTo(3 + 2 * at, 13);
      }),
      { seed: 3 },
    );
  });

  test('gives at one half exactly what the function gives', () => {
    expect(new InverseTable((at) => gammaQuantile(at, 2)).value(0.5)).toBe(gammaQuantile(0.5, 2));
  });

  test('keeps the mean of the distribution: gamma of shape 2 has mean 2', () => {
    const table = new InverseTable((at) => gammaQuantile(at, 2));
    const cells = 200_000;
    let sum = 0;
    for (let cell = 0; cell < cells; cell++) sum += table.value((cell + 0.5) / cells);
    // The midpoint rule leaves out about ln(cells) / cells of the tail; the table must add nothing to that.
    expect(Math.abs(sum / cells - 2)).toBeLessThan(2e-5);
  });

  test('reaches the smallest and the largest draw of 32 bits, and beyond them asks the function itself', () => {
    const inverse = (at: number) => -Math.log1p(-at);
    const table = new InverseTable(inverse);
    expect(table.value(2 ** -33)).toBe(inverse(2 ** -33));
    expect(table.value(1 - 2 ** -33)).toBe(inverse(1 - 2 ** -33));
    expect(table.value(2 ** -40)).toBe(inverse(2 ** -40));
    expect(table.value(1 - 2 ** -45)).toBe(inverse(1 - 2 ** -45));
  });

  test.each([0, 1, -0.1, 1.1, Number.NaN])('refuses u = %s', (at) => {
    const table = new InverseTable((inner) => inner, 64);
    expect(() => table.value(at)).toThrow(RangeError);
  });

  test.each([0, 63, 100, -64, Number.NaN])('refuses %s knots', (knots) => {
    expect(() => new InverseTable((at) => at, knots)).toThrow(/multiple of 64/);
  });

  test('refuses a function that is not finite', () => {
    expect(() => new InverseTable((at) => 1 / (at - 0.25))).toThrow(/not finite/);
  });
});
