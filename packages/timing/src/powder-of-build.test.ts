import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { powderOfBuild } from './powder-of-build.ts';

const use = { bedDensity: 0.45, partDensity: 1, virginShare: 0.4 };

describe('powderOfBuild', () => {
  it('fills a build with what lies around the parts and what they are made of', () => {
    // 10 litres of cake, 1 litre of parts: 9000 cm3 x 0.45 g come back, 1000 cm3 x 1 g stay in the parts.
    expect(powderOfBuild(use, 10e6, 1e6)).toEqual({
      inPartsGrams: 1000,
      returnedGrams: 4050,
      virginGrams: expect.closeTo(0.4 * 5050, 9),
      usedGrams: expect.closeTo(0.6 * 5050, 9),
    });
  });

  it('neither loses nor makes powder', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const density = fc.double({ min: 0.1, max: 9, noNaN: true });
    const volume = fc.double({ min: 1, max: 1e8, noNaN: true });
    fc.assert(
      fc.property(
        volume,
        share,
        density,
        density,
        share,
        (cake, part, bedDensity, partDensity, virginShare) => {
          const powder = powderOfBuild({ bedDensity, partDensity, virginShare }, cake, part * cake);
          const put = powder.virginGrams + powder.usedGrams;
          expect(powder.returnedGrams + powder.inPartsGrams).toBeCloseTo(put, -Math.log10(put) + 9);
          for (const grams of Object.values(powder)) expect(grams).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  it('keeps the store of used powder level when the virgin share is what stays in the parts', () => {
    const virginShare = 1000 / 5050;
    const { usedGrams, returnedGrams } = powderOfBuild({ ...use, virginShare }, 10e6, 1e6);
    expect(usedGrams).toBeCloseTo(returnedGrams, 9);
  });

  it('refuses parts that are larger than the cake, and densities of nothing', () => {
    expect(() => powderOfBuild(use, 100, 101)).toThrow(
      new RangeError('Parts of 101 mm3 are more than a part cake of 100 mm3.'),
    );
    expect(() => powderOfBuild({ ...use, bedDensity: 0 }, 100, 1)).toThrow(
      new RangeError('The density of the powder bed must be above 0, not 0.'),
    );
    expect(() => powderOfBuild({ ...use, virginShare: 1.5 }, 100, 1)).toThrow(RangeError);
  });
});
