import type { BuildTimeModel, PartShape } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { materialVolume } from './material-volume.ts';

const cube: PartShape = {
  width: 20,
  depth: 20,
  height: 20,
  volume: 8000,
  surface: 2400,
  footprint: 400,
  overhangArea: 0,
  supportedVolume: 1000,
  supportContactArea: 0,
  layerAreas: [],
};
const mask: BuildTimeModel = {
  kind: 'mask',
  layer: 0.1,
  secondsPerLayer: 8,
  bottomLayers: 0,
  secondsPerBottomLayer: 0,
};

describe('material of a piece', () => {
  it('is what extrusion lays down, with supports', () => {
    const extrusion: BuildTimeModel = {
      kind: 'extrusion',
      layer: 0.2,
      rate: 5,
      secondsPerLayer: 0,
      wallThickness: 1,
      skinThickness: 1,
      infillShare: 0.25,
      supportShare: 0.2,
    };
    // Walls 1600 mm2, skins 800 mm2, both of 1 mm; a quarter of the 5600 mm3 inside; a fifth of 1000 mm3 of supports.
    expect(materialVolume('MEX', extrusion, cube)).toBeCloseTo(1600 + 800 + 1400 + 200, 9);
  });

  it('is the solid and a twentieth of what is supported in a vat, and the solid in powder', () => {
    expect(materialVolume('VPP', mask, cube)).toBe(8050);
    const powder: BuildTimeModel = {
      kind: 'powder bed',
      layer: 0.1,
      secondsPerLayer: 20,
      scanRate: 500,
      bedding: 10,
    };
    expect(materialVolume('PBF', powder, cube)).toBe(8000);
  });
});
