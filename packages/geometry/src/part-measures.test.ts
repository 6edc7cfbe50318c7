import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MeshError } from './mesh-error.ts';
import { AS_GIVEN, orientedMesh, type Rotation } from './oriented-mesh.ts';
import { measure, restingPart, SLABS } from './part-measures.ts';
import { downwardFaces } from './supports.ts';
import {
  box,
  cone,
  extruded,
  globe,
  icosphere,
  moved,
  regularPolygon,
  reversed,
  together,
  torus,
  turnedAboutZ,
} from './test-data/shapes.ts';

const UPSIDE_DOWN: Rotation = [1, 0, 0, 0, -1, 0, 0, 0, -1];

/** A post of 20 x 20 x 30 mm with a plate of 60 x 40 x 5 mm on it; the plate sticks out over 60 x 40 - 20 x 20 mm2. */
function table() {
  return together(box(20, 20, 30, [20, 10, 0]), box(60, 40, 5, [0, 0, 30]));
}

describe('The shape of a part', () => {
  // G01 and G10; closed form.
  test('of a standing box is exact, and its bottom lies on the platform and is no overhang', () => {
    const { shape, restingArea, isFirm } = restingPart(box(10, 20, 30, [7, -3, 100]), AS_GIVEN);
    expect(restingArea).toBeCloseTo(200, 9);
    expect(isFirm).toBe(true);
    const { layerAreas, ...rest } = shape;
    expect(rest.width).toBe(10);
    expect(rest.depth).toBe(20);
    expect(rest.height).toBe(30);
    expect(rest.volume).toBeCloseTo(6000, 9);
    expect(rest.surface).toBeCloseTo(2200, 9);
    expect(rest.footprint).toBeCloseTo(200, 9);
    expect(rest.overhangArea).toBe(0);
    expect(rest.supportedVolume).toBe(0);
    expect(rest.supportContactArea).toBe(0);
    expect(layerAreas).toHaveLength(SLABS);
    for (const area of layerAreas) expect(area).toBeCloseTo(200, 8);
  });

  // G14; closed form.
  test('of a box turned about the vertical has the box of the closed form and the same volume', () => {
    const shape = measure(turnedAboutZ(box(10, 20, 30), 0.7), AS_GIVEN);
    expect(shape.width).toBeCloseTo(20.532775617598706, 9);
    expect(shape.depth).toBeCloseTo(21.739020618066682, 9);
    expect(shape.height).toBeCloseTo(30, 9);
    expect(shape.volume).toBeCloseTo(6000, 8);
    expect(shape.surface).toBeCloseTo(2200, 8);
    expect(Math.abs(shape.footprint / 200 - 1)).toBeLessThan(0.002);
  });

  // G10; Archimedes' hat-box theorem. The faces of the ball that straddle 45 degrees are in or out as a whole.
  test('of a ball counts the faces at less than 45 degrees as overhang', () => {
    const radius = 100;
    const part = orientedMesh(
      moved(globe(512, 512), ([x, y, z]) => [radius * x, radius * y, radius * z]),
      AS_GIVEN,
    );
    const { overhangArea, projectedOverhang, restingArea } = downwardFaces(part, -Math.SQRT1_2);
    const area = (overhangArea + restingArea) / radius ** 2;
    expect(Math.abs(area / 1.84030236902122 - 1)).toBeLessThan(0.01);
    expect(Math.abs((projectedOverhang + restingArea) / radius ** 2 / 1.5707963267948966 - 1)).toBeLessThan(
      0.01,
    );
    expect(Math.abs(area / (4 * Math.PI) - 0.1464466094067262)).toBeLessThan(0.0015);
  });

  // Area of the circle, and volume between the lower half of the ball and the platform: r^3 (pi - 2 pi / 3).
  test('of a ball has the footprint of its circle, and support up to its equator when all of it is overhang', () => {
    const ball = moved(icosphere(5), ([x, y, z]) => [20 * x, 20 * y, 20 * z]);
    const shape = measure(ball, AS_GIVEN, { overhangAngle: 90 });
    expect(Math.abs(shape.footprint / (400 * Math.PI) - 1)).toBeLessThan(0.001);
    expect(Math.abs(shape.supportedVolume / ((8000 * Math.PI) / 3) - 1)).toBeLessThan(0.005);
    expect(measure(ball, AS_GIVEN, { overhangAngle: 0 }).supportedVolume).toBe(0);
  });

  // G06; closed form: a 64-sided prism lying and standing.
  test('of a prism has layers of the area of its polygon', () => {
    const shape = measure(extruded(regularPolygon(64, 10), 20), AS_GIVEN);
    for (const area of shape.layerAreas) expect(area).toBeCloseTo(6273.096981091878 / 20, 7);
    expect(Math.abs(shape.footprint / (6273.096981091878 / 20) - 1)).toBeLessThan(0.001);
  });

  // Products of sides. The bodies share a face of 20 x 20 mm, which is not an overhang anyone sees.
  test('of a plate on a post has supports under what sticks out, and stands the other way without any', () => {
    const shape = measure(table(), AS_GIVEN);
    expect(shape.volume).toBeCloseTo(20 * 20 * 30 + 60 * 40 * 5, 6);
    expect(shape.footprint).toBeCloseTo(2400, 6);
    expect(Math.abs(shape.supportedVolume / (30 * (2400 - 400)) - 1)).toBeLessThan(0.01);
    const other = measure(table(), UPSIDE_DOWN);
    expect(other.supportedVolume).toBe(0);
  });

  // Products of sides: an arch of 60 x 20 mm; between feet of 10 mm a gap of 40 mm, 25 mm above a floor of 5 mm.
  test('of a window counts supports that stand on the part itself', () => {
    const outline = together(
      box(60, 20, 5),
      box(10, 20, 25, [0, 0, 5]),
      box(10, 20, 25, [50, 0, 5]),
      box(60, 20, 5, [0, 0, 30]),
    );
    const shape = measure(outline, AS_GIVEN);
    const gap = 40 * 20;
    expect(Math.abs(shape.supportedVolume / (25 * gap) - 1)).toBeLessThan(0.01);
    // The underside of the lid is a face of the whole lid here; it and the floor of the gap touch supports.
    expect(Math.abs(shape.supportContactArea / (60 * 20 + 10 * 20 * 2 + gap) - 1)).toBeLessThan(0.01);
  });

  // Products of sides: two cubes of 10 mm that share 5 x 10 x 10 mm.
  test('counts volume and layers once where bodies overlap', () => {
    const shape = measure(together(box(10, 10, 10), box(10, 10, 10, [5, 0, 0])), AS_GIVEN);
    expect(Math.abs(shape.volume / 1500 - 1)).toBeLessThan(0.005);
    for (const area of shape.layerAreas) expect(Math.abs(area / 150 - 1)).toBeLessThan(0.005);
  });

  // G07; closed form.
  test('of a hollow box has layers with the void cut out', () => {
    const hollow = together(box(40, 40, 40), reversed(box(30, 30, 30, [5, 5, 5])));
    const shape = measure(hollow, AS_GIVEN);
    expect(shape.layerAreas[SLABS / 2]).toBeCloseTo(1600 - 900, 6);
    expect(shape.layerAreas[0]).toBeCloseTo(1600, 6);
    expect(Math.abs(shape.supportedVolume / 27000 - 1)).toBeLessThan(0.01);
  });

  test('tells a part that stands on its tip from one on its base', () => {
    const tip = restingPart(cone(64, 10, 20), UPSIDE_DOWN);
    expect(tip.restingArea).toBe(0);
    expect(restingPart(cone(64, 10, 20), AS_GIVEN).restingArea).toBeGreaterThan(300);
    const leaning = together(box(10, 10, 10), box(60, 10, 10, [0, 0, 10]));
    expect(restingPart(leaning, AS_GIVEN).isFirm).toBe(false);
  });

  test('has layers that add up to the volume, whatever the part', () => {
    const side = fc.double({ min: 0.5, max: 300, noNaN: true });
    const angle = fc.double({ min: 0, max: 6.3, noNaN: true });
    fc.assert(
      fc.property(side, side, angle, fc.integer({ min: 3, max: 24 }), (radius, height, turn, corners) => {
        const cosine = Math.cos(turn);
        const sine = Math.sin(turn);
        const parts = [
          extruded(regularPolygon(corners, radius), height),
          cone(corners, radius, height),
          torus(2 * radius, radius, corners + 3, corners),
        ];
        for (const part of parts) {
          const shape = measure(part, [1, 0, 0, 0, cosine, -sine, 0, sine, cosine]);
          const sum = shape.layerAreas.reduce((total, area) => total + area, 0);
          expect((sum * shape.height) / SLABS / shape.volume).toBeCloseTo(1, 6);
          expect(shape.footprint).toBeLessThanOrEqual(shape.width * shape.depth * (1 + 1e-9));
          expect(shape.footprint * shape.height).toBeGreaterThan(0.99 * shape.volume);
        }
      }),
      { numRuns: 25 },
    );
  });

  test('of a sheet without volume is refused', () => {
    const sheet = {
      positions: Float64Array.from([0, 0, 0, 10, 0, 0, 0, 10, 0]),
      triangles: Uint32Array.from([0, 1, 2]),
    };
    expect(() => measure(sheet, AS_GIVEN)).toThrow(
      new MeshError(
        'The mesh encloses no volume (its box is 10 x 10 x 0 mm).',
        'Give the surface a thickness, or export the solid body.',
      ),
    );
  });

  test('whose surface lies over itself very often is measured with fewer columns, or refused, never without bound', () => {
    const sheets = (count: number) =>
      together(...Array.from({ length: count }, (_, index) => box(100, 100, 1, [0, 0, 3 * index])));
    const shape = measure(sheets(400), AS_GIVEN);
    expect(shape.footprint).toBeCloseTo(10_000, 6);
    expect(shape.supportedVolume / (399 * 2 * 10_000)).toBeCloseTo(1, 6);
    expect(() => measure(sheets(5000), AS_GIVEN)).toThrow(
      'The surface lies 10,000 times over itself, which no part does.',
    );
  });

  test('wants an overhang angle from 0 to 90 degrees', () => {
    expect(() => measure(box(1, 1, 1), AS_GIVEN, { overhangAngle: 91 })).toThrow(RangeError);
    expect(() => measure(box(1, 1, 1), AS_GIVEN, { overhangAngle: Number.NaN })).toThrow(RangeError);
  });
});
