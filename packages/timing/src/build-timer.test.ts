import type { BuildTimeModel, PartShape } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { BuildTimer } from './build-timer.ts';
import { block } from './test-data/blocks.ts';

const extrusion: BuildTimeModel = {
  kind: 'extrusion',
  layer: 0.2,
  rate: 8,
  secondsPerLayer: 4,
  wallThickness: 1.2,
  skinThickness: 0.8,
  infillShare: 1,
  supportShare: 0.2,
};
const mask: BuildTimeModel = {
  kind: 'mask',
  layer: 0.05,
  secondsPerLayer: 8,
  bottomLayers: 5,
  secondsPerBottomLayer: 40,
};
const laser: BuildTimeModel = { kind: 'laser vat', layer: 0.1, secondsPerLayer: 30, scanRate: 200 };
const powder: BuildTimeModel = {
  kind: 'powder bed',
  layer: 0.1,
  secondsPerLayer: 35,
  scanRate: 1000,
  bedding: 0,
};

/** Hours of so many pieces of one shape, in a build as high as given. */
function hours(model: BuildTimeModel, shape: PartShape, pieces: number, height = shape.height): number {
  return new BuildTimer(model, [shape]).printHours(Int32Array.of(pieces), height);
}

describe('BuildTimer', () => {
  // Published check G13, closed form.
  it('takes for a mask 600 layers of 8 s and 5 first layers of 40 s more: 1.388888889 h', () => {
    expect(hours(mask, block(40, 30, 30), 1)).toBeCloseTo(1.388888889, 9);
  });

  it('takes for extrusion 20 cm3 at 8 mm3/s and 150 layers of 4 s: 0.8611111111 h', () => {
    const part = { ...block(40, 30, 30), volume: 20_000 };
    expect(hours(extrusion, part, 1)).toBeCloseTo(0.8611111111, 10);
  });

  it('takes for a powder bed 300 layers of 35 s, which with 2 h of warm-up and 12 h of cool-down are 16.91666667 h', () => {
    const nothing = new BuildTimer(powder, [block(1, 1, 1)]).printHours(Int32Array.of(0), 30);
    expect(nothing + 2 + 12).toBeCloseTo(16.91666667, 8);
  });

  // Published check N09: I. Kucukkoc, Computers and Operations Research 105 (2019); parameters from memory.
  it('takes set-up, volume rate and height rate as in the scheduling of batch builds: 12.3728 h, split in two 17.1728 h', () => {
    const parts = [
      { ...block(40, 40, 40), volume: 50_000 },
      { ...block(40, 40, 60), volume: 30_000 },
      { ...block(80, 80, 30), volume: 120_000 },
    ];
    const timer = new BuildTimer(
      {
        kind: 'volume and height',
        hoursPerBuild: 2,
        hoursPerCubicCentimetre: 0.030864,
        hoursPerCentimetre: 0.7,
      },
      parts,
    );
    expect(timer.printHours(Int32Array.of(1, 1, 1), 60)).toBeCloseTo(12.3728, 10);
    const split = timer.printHours(Int32Array.of(1, 0, 1), 40) + timer.printHours(Int32Array.of(0, 1, 0), 60);
    expect(split).toBeCloseTo(17.1728, 10);
  });

  // Published check F07: W. J. Hopp and M. L. Spearman, Factory Physics, chapter 9, closed form.
  it('prints ten extruded parts of 12 min one after another: 2 h, in which each waits 0.9 h', () => {
    const part = { ...block(20, 20, 20), volume: 720 * 8 };
    const timer = new BuildTimer({ ...extrusion, secondsPerLayer: 0 }, [part]);
    const after = Array.from({ length: 11 }, (_, pieces) => timer.printHours(Int32Array.of(pieces), 20));
    const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / 10;
    expect(after[10]).toBeCloseTo(2, 12);
    expect(mean(after.slice(0, 10))).toBeCloseTo(0.9, 12);
    expect(mean(after.slice(1))).toBeCloseTo(1.1, 12);
  });

  // The following four are common practice, no source.
  it('prints a full mask platform in the time of a single part', () => {
    expect(hours(mask, block(20, 20, 30), 40)).toBe(hours(mask, block(20, 20, 30), 1));
  });

  it('gains nothing per extruded part from a fuller platform', () => {
    const part = block(30, 20, 25);
    expect(hours(extrusion, part, 12) / 12).toBeCloseTo(hours(extrusion, part, 1), 12);
  });

  it('needs for a powder bed the layers of the cake with its bedding, and the scanning of every part', () => {
    const part = block(20, 20, 20);
    // 80 mm + 10 mm bedding: 900 layers of 35 s; 10 parts of 8000 mm3 / 0.1 mm / 1000 mm2/s.
    const model: BuildTimeModel = { ...powder, bedding: 10 };
    expect(hours(model, part, 10, 80)).toBeCloseTo((900 * 35 + 10 * 80) / 3600, 12);
    expect(hours(model, part, 10, 80) / 10).toBeLessThan(hours(model, part, 1) / 2);
  });

  it('needs for a laser in a vat the layers of the highest part, and the scanning of parts and thin supports', () => {
    const part = { ...block(20, 20, 20), supportedVolume: 10_000 };
    // 200 layers of 30 s; 3 x (8000 + 5 % of 10000) mm3 / 0.1 mm / 200 mm2/s.
    expect(hours(laser, part, 3)).toBeCloseTo((200 * 30 + 3 * 425) / 3600, 12);
  });

  it('exposes no more first layers than there are', () => {
    expect(hours(mask, block(20, 20, 0.15), 1)).toBeCloseTo((3 * 8 + 3 * 40) / 3600, 12);
  });

  it('adds up different shapes', () => {
    const shapes = [block(30, 20, 25), block(10, 10, 60)];
    const timer = new BuildTimer(extrusion, shapes);
    expect(timer.printHours(Int32Array.of(2, 3), 60)).toBeCloseTo(
      hours(extrusion, shapes[0], 2) + hours(extrusion, shapes[1], 3),
      12,
    );
  });

  it.each([
    [{ ...extrusion, rate: 0 }, 'The rate must be above 0, not 0.'],
    [{ ...extrusion, infillShare: 1.2 }, 'The infill share must lie between 0 and 1, not 1.2.'],
    [{ ...mask, layer: 0 }, 'The layer thickness must be above 0, not 0.'],
    [{ ...mask, secondsPerLayer: -1 }, 'The time per layer must be 0 or more, not -1.'],
    [{ ...laser, scanRate: Number.NaN }, 'The scan rate must be above 0, not NaN.'],
    [{ ...powder, bedding: -2 }, 'The bedding must be 0 or more, not -2.'],
    [
      { kind: 'volume and height', hoursPerBuild: -1, hoursPerCubicCentimetre: 0, hoursPerCentimetre: 0 },
      'The time per build must be 0 or more, not -1.',
    ],
  ] as const)('refuses %j', (model, message) => {
    expect(() => new BuildTimer(model as BuildTimeModel, [])).toThrow(new RangeError(message));
  });
});
