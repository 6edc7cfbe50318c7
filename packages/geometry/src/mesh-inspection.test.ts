import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inspectMesh } from './mesh-inspection.ts';
import { solidOf } from './solid.ts';
import {
  box,
  cone,
  extended,
  flipped,
  icosphere,
  moved,
  reversed,
  together,
  torus,
  without,
} from './test-data/shapes.ts';

const NONE = {
  openEdges: 0,
  inconsistentEdges: 0,
  nonManifoldEdges: 0,
  zeroAreaTriangles: 0,
  duplicateTriangles: 0,
  inverted: false,
};

describe('A mesh that is inspected', () => {
  // G01 and G09: V - E + F is 2 for a box, 0 for a ring.
  test('is counted, and has no warning when it is closed', () => {
    const inspection = inspectMesh(box(10, 20, 30));
    expect(inspection).toMatchObject({ vertices: 8, edges: 18, triangles: 12, defects: NONE });
    expect(inspection.warnings).toEqual([]);
    expect(inspection.notes).toEqual([]);
    const ring = inspectMesh(torus(20, 5, 48, 24));
    expect(ring.vertices - ring.edges + ring.triangles).toBe(0);
    expect(ring.defects).toEqual(NONE);
  });

  // G15 a; definition, hand-checked.
  test('with one triangle missing has three open edges, and its hole is closed by a lid', () => {
    const { defects, warnings, mesh } = inspectMesh(without(box(10, 20, 30), 0));
    expect(defects).toEqual({ ...NONE, openEdges: 3 });
    expect(warnings).toEqual([
      '3 open edges: the surface has 1 hole, measured as if closed by a lid across the rim. Volume, surface and supports are estimates.',
    ]);
    expect(solidOf(mesh).volume).toBeCloseTo(6000, 9);
    expect(inspectMesh(mesh).defects).toEqual(NONE);
  });

  // G15 b; definition, hand-checked.
  test('with one flipped triangle has three inconsistent edges, and the triangle is turned', () => {
    const { defects, warnings, mesh } = inspectMesh(flipped(box(10, 20, 30), 4));
    expect(defects).toEqual({ ...NONE, inconsistentEdges: 3 });
    expect(warnings).toEqual([
      '3 edges between flipped triangles: 1 triangle faced against its neighbours and was turned for measuring.',
    ]);
    expect(solidOf(mesh).volume).toBeCloseTo(6000, 9);
    expect(inspectMesh(mesh).defects).toEqual(NONE);
  });

  // G15 c; definition, hand-checked.
  test('with a triangle of no area names it, and measures as before', () => {
    const { defects, notes, warnings, mesh } = inspectMesh(extended(box(10, 20, 30), 0, 1, 1));
    expect(defects).toEqual({ ...NONE, zeroAreaTriangles: 1 });
    expect(notes).toEqual(['1 triangle without area: no measure changes.']);
    expect(warnings).toEqual([]);
    expect(solidOf(mesh).volume).toBeCloseTo(6000, 9);
  });

  test('keeps a triangle whose corners are on one line, for it holds its neighbours together', () => {
    const split = moved(box(10, 20, 30), (point) => point);
    const positions = Float64Array.from([...split.positions, 5, 0, 0]);
    // Corner 8 lies on the edge from 0 to 1; one side knows of it, the other does not, a flat triangle fills the gap.
    const triangles = [...split.triangles].slice(3);
    const mesh = { positions, triangles: Uint32Array.from([...triangles, 0, 2, 8, 8, 2, 1, 0, 8, 1]) };
    const { defects, mesh: mended } = inspectMesh(mesh);
    expect(defects).toEqual({ ...NONE, zeroAreaTriangles: 1 });
    expect(solidOf(mended).volume).toBeCloseTo(6000, 9);
  });

  // G15 d; definition, hand-checked.
  test('with a doubled triangle has three edges of three triangles, and counts it once', () => {
    const { defects, warnings, mesh } = inspectMesh(extended(box(10, 20, 30), 5, 7, 6));
    expect(defects).toEqual({ ...NONE, nonManifoldEdges: 3, duplicateTriangles: 1 });
    expect(warnings).toEqual([
      '1 triangle is there more than once (3 edges on three or more triangles): each was measured once.',
    ]);
    expect(solidOf(mesh).volume).toBeCloseTo(6000, 9);
  });

  test('that faces inwards is turned inside out, and voids stay voids', () => {
    const hollow = together(box(40, 40, 40), reversed(box(30, 30, 30, [5, 5, 5])));
    const { defects, notes, warnings, mesh } = inspectMesh(reversed(hollow));
    expect(defects).toEqual({ ...NONE, inverted: true });
    expect(notes).toEqual(['All triangles faced inwards: the mesh was turned inside out for measuring.']);
    expect(warnings).toEqual([]);
    expect(solidOf(mesh).volume).toBeCloseTo(37000, 8);
  });

  test('with corners that nearly meet is joined', () => {
    const crack = box(100, 100, 100);
    const positions = Float64Array.from([...crack.positions, 100.0001, 100, 100]);
    const triangles = crack.triangles.slice();
    const at = triangles.lastIndexOf(7);
    triangles[at] = 8;
    const { defects, notes, mesh } = inspectMesh({ positions, triangles });
    expect(defects).toEqual(NONE);
    expect(notes).toEqual(['1 corner on open edges within 0.0017 mm of another one was joined with it.']);
    expect(solidOf(mesh).volume).toBeCloseTo(1e6, 0);
  });

  test('whose bodies share an edge is told apart from one with a fin', () => {
    const first = box(10, 10, 10);
    const second = box(10, 10, 10, [10, 10, 0]);
    const shared = new Map([
      [0, 3],
      [4, 7],
    ]);
    const touching = together(first, second);
    const joined = touching.triangles.map((vertex) =>
      vertex < 8 ? vertex : (shared.get(vertex - 8) ?? vertex),
    );
    const bodies = inspectMesh({ positions: touching.positions, triangles: joined });
    expect(bodies.defects).toEqual({ ...NONE, nonManifoldEdges: 1 });
    expect(bodies.warnings).toEqual([
      '1 edge where surfaces touch (four or more triangles): the volume holds, the part may be weak there.',
    ]);
    const fin = inspectMesh({
      positions: Float64Array.from([...first.positions, 20, 20, 5]),
      triangles: Uint32Array.from([...first.triangles, 3, 7, 8]),
    });
    expect(fin.defects).toEqual({ ...NONE, openEdges: 2, nonManifoldEdges: 1 });
    expect(fin.warnings).toHaveLength(2);
  });

  test('with an edge at which very many triangles meet a vertex is sorted all the same', () => {
    expect(inspectMesh(cone(5000, 10, 20)).defects).toEqual(NONE);
  });

  test('has a volume near that of the whole one, whichever triangle is missing and wherever it stands', () => {
    const ball = icosphere(2);
    const whole = solidOf(ball).volume;
    const shift = fc.double({ min: -1000, max: 1000, noNaN: true });
    fc.assert(
      fc.property(fc.nat(319), shift, shift, (triangle, byX, byZ) => {
        const open = moved(without(ball, triangle), ([x, y, z]) => [x + byX, y, z + byZ]);
        const { mesh, defects } = inspectMesh(open);
        expect(defects.openEdges).toBe(3);
        expect(solidOf(mesh).volume).toBeCloseTo(whole, 8);
      }),
    );
  });

  test('has the volume of the whole one, whichever triangles are flipped as long as they are few', () => {
    const ball = icosphere(2);
    const whole = solidOf(ball).volume;
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(319), { minLength: 1, maxLength: 100 }), (triangles) => {
        const { mesh, defects } = inspectMesh(flipped(ball, ...triangles));
        expect(defects.inconsistentEdges).toBeGreaterThan(0);
        expect(solidOf(mesh).volume).toBeCloseTo(whole, 9);
      }),
    );
  });
});
