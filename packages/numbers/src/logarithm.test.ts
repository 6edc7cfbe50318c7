import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { logarithmBelowOne } from './logarithm.ts';

const draw = fc.integer({ min: 0, max: 2 ** 32 - 1 }).map((bits) => (bits + 0.5) / 2 ** 32);
/** As many draws near 0 as near 1, each octave as often as any other. */
const farDraw = fc
  .double({ min: 0, max: 32, noNaN: true })
  .map((octave) => (Math.floor(2 ** octave) - 0.5) / 2 ** 32)
  .chain((u) => fc.constantFrom(u, 1 - u));

describe('the logarithm of a number below one', () => {
  test('agrees with Math.log within 5e-16 of the value for every draw of 32 bits', () => {
    fc.assert(
      fc.property(fc.oneof(draw, farDraw), (x) => {
        expect(Math.abs(logarithmBelowOne(x) / Math.log(x) - 1)).toBeLessThan(5e-16);
      }),
      { numRuns: 100_000, seed: 1 },
    );
  });

  test('agrees with Math.log at both ends of all octaves and cells', () => {
    for (let octave = 0; octave < 33; octave++) {
      for (let cell = 256; cell < 512; cell++) {
        for (const step of [0, 2 ** -40, 1 - 2 ** -20]) {
          const x = ((cell + step) / 512) * 2 ** -octave;
          expect(Math.abs(logarithmBelowOne(x) - Math.log(x))).toBeLessThanOrEqual(
            5e-16 * -Math.log(x) + 2e-16,
          );
        }
      }
    }
  });

  test('never decreases from one draw to the next', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 32 - 2 }), (bits) => {
        const [low = 0, high = 0] = [bits, bits + 1].map((k) => logarithmBelowOne((k + 0.5) / 2 ** 32));
        expect(high).toBeGreaterThanOrEqual(low);
      }),
      { numRuns: 100_000, seed: 2 },
    );
  });

  test('is Math.log below the smallest draw', () => {
    for (const x of [2 ** -34, 1e-20, 1e-300]) expect(logarithmBelowOne(x)).toBe(Math.log(x));
  });
});
