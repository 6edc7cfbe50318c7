import type { BuildSpace } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { BuildPacker } from './build-packer.ts';
import { block } from './test-data/blocks.ts';

const platform: BuildSpace = {
  kind: 'platform',
  width: 200,
  depth: 100,
  height: 150,
  margin: 5,
  spacing: 5,
};
const bed: BuildSpace = { ...platform, kind: 'powder bed', packingDensity: 0.1, boxShare: 0.5 };

describe('BuildPacker', () => {
  it('packs parts side by side on a platform', () => {
    const packer = new BuildPacker(platform, [block(90, 40, 30), block(40, 40, 60)]);
    const counts = Int32Array.of(2, 4);
    expect(packer.fits(counts)).toBe(true);
    expect(packer.height(counts)).toBe(60);
    expect(packer.fill(counts)).toBeCloseTo((2 * 95 * 45 + 4 * 45 * 45) / (195 * 95), 12);
    expect(packer.most(0)).toBe(4);
    expect(packer.fits(Int32Array.of(4, 1))).toBe(false);
  });

  it('stacks parts in a powder bed', () => {
    const packer = new BuildPacker(bed, [block(30, 30, 30)]);
    expect(packer.most(0)).toBe(Math.floor((150 * 190 * 90 * 0.1) / 27_000));
    expect(packer.fits(Int32Array.of(packer.most(0)))).toBe(true);
    expect(packer.fill(Int32Array.of(1))).toBeCloseTo(0.2, 12);
  });

  it.each(['width', 'depth', 'height'] as const)('refuses a part or a space with a %s of nothing', (size) => {
    for (const space of [platform, bed]) {
      expect(() => new BuildPacker(space, [{ ...block(10, 10, 10), [size]: 0 }])).toThrow(
        new RangeError(`The ${size} of a part must be above 0, not 0.`),
      );
      expect(() => new BuildPacker({ ...space, [size]: -1 }, [])).toThrow(
        new RangeError(`The ${size} of the ${space.kind} must be above 0, not -1.`),
      );
    }
  });

  it('refuses a part without volume', () => {
    expect(() => new BuildPacker(platform, [{ ...block(10, 10, 10), volume: 0 }])).toThrow(
      new RangeError('The volume of a part must be above 0, not 0.'),
    );
  });

  it('refuses margins and spacing that leave nothing of the space', () => {
    expect(() => new BuildPacker({ ...platform, margin: 50 }, [])).toThrow(
      new RangeError(
        'The platform is 100 mm across, and margins of 50 mm on both sides leave nothing of it.',
      ),
    );
    expect(() => new BuildPacker({ ...bed, spacing: 90 }, [])).toThrow(
      new RangeError(
        'The powder bed has 90 mm across between its margins, not more than the spacing of 90 mm.',
      ),
    );
    expect(() => new BuildPacker({ ...platform, spacing: -1 }, [])).toThrow(
      new RangeError('The spacing must be 0 or more, not -1.'),
    );
  });

  it('knows no shape that is not there', () => {
    expect(() => new BuildPacker(platform, []).most(0)).toThrow(new RangeError('There is no shape 0.'));
  });
});
