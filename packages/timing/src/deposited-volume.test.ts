import type { ExtrusionTime } from '@buildweek/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depositedVolume } from './deposited-volume.ts';
import { block } from './test-data/blocks.ts';

const model: ExtrusionTime = {
  kind: 'extrusion',
  layer: 0.2,
  rate: 8,
  secondsPerLayer: 4,
  wallThickness: 0.8,
  skinThickness: 1,
  infillShare: 0.2,
  supportShare: 0.25,
};

describe('depositedVolume', () => {
  it('adds walls around, skins at top and bottom, and infill inside', () => {
    // 4 sides of 20 x 20 mm, 0.8 mm thick; 2 faces of 20 x 20 mm, 1 mm thick; a fifth of what is left of 8000 mm3.
    expect(depositedVolume(model, block(20, 20, 20))).toEqual({
      walls: 1280,
      skins: 800,
      infill: expect.closeTo(0.2 * (8000 - 1280 - 800), 9),
      supports: 0,
      total: expect.closeTo(1280 + 800 + 1184, 9),
    });
  });

  it('counts the edges of a cube of 20 mm twice, which is 8 % of the shell and about 4 % in all', () => {
    const even = { ...model, skinThickness: 0.8 };
    const { walls, skins, total } = depositedVolume(even, block(20, 20, 20));
    const shell = 20 ** 3 - 18.4 ** 3;
    expect((walls + skins) / shell).toBeCloseTo(1.08, 2);
    expect(total / (shell + 0.2 * 18.4 ** 3)).toBeCloseTo(1.04, 2);
  });

  it('lays down the whole solid where the part is too thin for walls and skins', () => {
    const thin = block(60, 40, 1.5);
    const { walls, skins, infill, total } = depositedVolume(model, thin);
    expect(infill).toBe(0);
    expect(walls + skins).toBeCloseTo(thin.volume, 9);
    expect(total).toBeCloseTo(thin.volume, 9);
  });

  it('lays down the support share of the supported volume', () => {
    const shape = { ...block(20, 20, 20), supportedVolume: 4000 };
    expect(depositedVolume(model, shape).supports).toBe(1000);
    expect(depositedVolume(model, shape).total - depositedVolume(model, block(20, 20, 20)).total).toBe(1000);
  });

  it('never lays down more than the solid and its supports, nor less than the infill share of the solid', () => {
    const size = fc.double({ min: 0.5, max: 300, noNaN: true });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const thickness = fc.double({ min: 0, max: 5, noNaN: true });
    fc.assert(
      fc.property(
        size,
        size,
        size,
        share,
        share,
        thickness,
        thickness,
        (width, depth, height, solid, infillShare, wallThickness, skinThickness) => {
          const shape = { ...block(width, depth, height), supportedVolume: 100 };
          const volume = shape.volume * Math.max(0.01, solid);
          const result = depositedVolume(
            { ...model, infillShare, wallThickness, skinThickness },
            { ...shape, volume },
          );
          expect(result.total).toBeLessThanOrEqual((volume + 25) * (1 + 1e-12));
          expect(result.total).toBeGreaterThanOrEqual((infillShare * volume + 25) * (1 - 1e-12));
          expect(result.walls + result.skins + result.infill + result.supports).toBeCloseTo(result.total, 6);
        },
      ),
    );
  });
});
