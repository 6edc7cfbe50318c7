import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { meshBounds } from './mesh.ts';
import { solidOf } from './solid.ts';
import {
  box,
  cone,
  convex,
  extruded,
  globe,
  icosahedron,
  icosphere,
  moved,
  octahedron,
  regularPolygon,
  regularTetrahedron,
  reversed,
  roundCube,
  together,
  torus,
  turnedAboutZ,
} from './test-data/shapes.ts';

/** Two sums of the same terms in another order differ by rounding only. */
const DIGITS = 9;

describe('Volume, surface and centroid', () => {
  // G01; divergence theorem (Zhang and Chen 2001; Mirtich 1996).
  test('of a box are the products of its sides, wherever it stands, and negative volume when inside out', () => {
    const mesh = box(10, 20, 30);
    const { volume, surface, centroid } = solidOf(mesh);
    expect(volume).toBeCloseTo(6000, DIGITS);
    expect(surface).toBeCloseTo(2200, DIGITS);
    expect(centroid[0]).toBeCloseTo(5, DIGITS);
    expect(centroid[1]).toBeCloseTo(10, DIGITS);
    expect(centroid[2]).toBeCloseTo(15, DIGITS);
    expect(meshBounds(mesh)).toEqual({ low: [0, 0, 0], high: [10, 20, 30] });
    expect(solidOf(reversed(mesh)).volume).toBeCloseTo(-6000, DIGITS);
    const far = moved(mesh, ([x, y, z]) => [x + 1000, y + 1000, z + 1000]);
    expect(solidOf(far).volume).toBeCloseTo(6000, DIGITS);
  });

  // G02; closed form.
  test('of a right-angled tetrahedron are those of the closed form', () => {
    const mesh = moved(
      convex(
        [
          [-0.5, -0.5, -0.5],
          [2.5, -0.5, -0.5],
          [-0.5, 3.5, -0.5],
          [-0.5, -0.5, 4.5],
        ],
        [
          [0, 1, 2],
          [0, 1, 3],
          [0, 2, 3],
          [1, 2, 3],
        ],
      ),
      ([x, y, z]) => [x + 0.5, y + 0.5, z + 0.5],
    );
    const { volume, surface, centroid } = solidOf(mesh);
    expect(volume).toBeCloseTo(10, DIGITS);
    expect(surface).toBeCloseTo(37.36542462386205, DIGITS);
    expect(centroid[0]).toBeCloseTo(0.75, DIGITS);
    expect(centroid[1]).toBeCloseTo(1, DIGITS);
    expect(centroid[2]).toBeCloseTo(1.25, DIGITS);
  });

  // G03; Coxeter, Regular Polytopes.
  test.each([
    ['octahedron', octahedron(), 1.3333333333333333, 6.928203230275509],
    ['icosahedron', icosahedron(), 2.53615071012041, 9.574541383273939],
    ['cube', roundCube(), 1.539600717839002, 8],
    ['tetrahedron', regularTetrahedron(), 0.5132002392796674, 4.618802153517007],
  ])('of the regular %s of circumradius 1 are those of the closed form', (_name, mesh, volume, surface) => {
    expect(solidOf(mesh).volume).toBeCloseTo(volume, DIGITS);
    expect(solidOf(mesh).surface).toBeCloseTo(surface, DIGITS);
  });

  // G04; computed, level 0 being the icosahedron of G03.
  test.each([
    [0, 20, 2.53615071012041, 9.574541383273937],
    [1, 80, 3.6587122085121595, 11.665931391718317],
    [2, 320, 4.047044679978849, 12.329848595234669],
    [3, 1280, 4.152740817093058, 12.506492733969928],
    [4, 5120, 4.17973894799464, 12.551353880096109],
  ])('of a ball of %i subdivisions approach those of the ball', (level, triangles, volume, surface) => {
    const mesh = icosphere(level);
    expect(mesh.triangles.length / 3).toBe(triangles);
    expect(solidOf(mesh).volume).toBeCloseTo(volume, DIGITS);
    expect(solidOf(mesh).surface).toBeCloseTo(surface, DIGITS);
  });

  // G05; frustum formula.
  test('of a globe of 16 by 32 are those of its frustums', () => {
    const mesh = globe(16, 32);
    expect(mesh.triangles.length / 3).toBe(960);
    expect(solidOf(mesh).volume).toBeCloseTo(4.1219417407858465, DIGITS);
    expect(solidOf(mesh).surface).toBeCloseTo(12.465694088650581, DIGITS);
  });

  // G06; closed form.
  test('of a prism and a cone over a regular polygon of 64 corners are those of the closed form', () => {
    const prism = solidOf(extruded(regularPolygon(64, 10), 20));
    expect(prism.volume).toBeCloseTo(6273.096981091878, 8);
    expect(prism.surface).toBeCloseTo(1883.442160891089, 8);
    expect(solidOf(cone(64, 10, 20)).volume).toBeCloseTo(2091.0323270306258, 8);
  });

  // G07; closed form.
  test('of a hollow box subtract the void', () => {
    const hollow = together(box(40, 40, 40), reversed(box(30, 30, 30, [5, 5, 5])));
    expect(solidOf(hollow).volume).toBeCloseTo(37000, 8);
    expect(solidOf(hollow).surface).toBeCloseTo(15000, 8);
  });

  // G08; shoelace formula.
  test('of a bracket drawn up from an L are those of the closed form', () => {
    const outline: [number, number][] = [
      [0, 0],
      [40, 0],
      [40, 10],
      [10, 10],
      [10, 40],
      [0, 40],
    ];
    const { volume, surface, centroid } = solidOf(extruded(outline, 30));
    expect(volume).toBeCloseTo(21000, 8);
    expect(surface).toBeCloseTo(6200, 8);
    expect(centroid[0]).toBeCloseTo(13.571428571428571, DIGITS);
    expect(centroid[1]).toBeCloseTo(13.571428571428571, DIGITS);
  });

  // G09; Pappus.
  test('of a ring of 48 by 24 are those of the closed form', () => {
    const { volume, surface } = solidOf(torus(20, 5, 48, 24));
    expect(volume).toBeCloseTo(9729.407356203406, 7);
    expect(surface).toBeCloseTo(3929.5571886684857, 7);
  });

  test('do not change when the part is turned or moved, whatever the part', () => {
    const side = fc.double({ min: 1, max: 200, noNaN: true });
    const shift = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(
        side,
        side,
        side,
        shift,
        fc.double({ min: 0, max: 6.3, noNaN: true }),
        (w, d, h, by, angle) => {
          const part = together(box(w, d, h), reversed(box(w / 2, d / 2, h / 2, [w / 4, d / 4, h / 4])));
          const other = moved(turnedAboutZ(part, angle), ([x, y, z]) => [z + by, x - by, y + by / 2]);
          const before = solidOf(part);
          const after = solidOf(other);
          expect(after.volume / before.volume).toBeCloseTo(1, 8);
          expect(after.surface / before.surface).toBeCloseTo(1, 8);
        },
      ),
    );
  });
});
