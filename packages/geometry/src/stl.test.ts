import { BufferGeometry, Float32BufferAttribute, Mesh as ThreeMesh, Uint32BufferAttribute } from 'three';
import { STLExporter } from 'three/examples/jsm/exporters/STLExporter.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { describe, expect, test } from 'vitest';
import { looksLikeAsciiStl, readAsciiStl, writeAsciiStl } from './ascii-stl.ts';
import {
  announcedTriangles,
  binaryStlLength,
  isBinaryStl,
  readBinaryStl,
  writeBinaryStl,
} from './binary-stl.ts';
import type { Mesh } from './mesh.ts';
import { MeshError } from './mesh-error.ts';
import { solidOf } from './solid.ts';
import { box, icosphere, reversed, together, torus } from './test-data/shapes.ts';

const encoder = new TextEncoder();

function threeGeometry(mesh: Mesh): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(mesh.positions, 3));
  geometry.setIndex(new Uint32BufferAttribute(mesh.triangles, 1));
  return geometry;
}

/** Corners of all triangles one after the other, as three keeps them. */
function corners(mesh: Mesh): number[] {
  return Array.from(mesh.triangles).flatMap((vertex) =>
    Array.from(mesh.positions.subarray(3 * vertex, 3 * vertex + 3)),
  );
}

function withHeader(bytes: Uint8Array, header: string): Uint8Array {
  const copy = bytes.slice();
  copy.set(encoder.encode(header));
  return copy;
}

const MESHES: [string, Mesh][] = [
  ['a box', box(10, 20, 30)],
  ['a ball', icosphere(2)],
  ['a ring', torus(20, 5, 12, 8)],
  ['two shells', together(box(40, 40, 40), reversed(box(30, 30, 30, [5, 5, 5])))],
];

describe('Binary STL', () => {
  // G11; STL of 1989, from memory: 84 bytes and 50 for each facet, the count as little-endian uint32 at byte 80.
  test('has 84 bytes and 50 for each facet', () => {
    const bytes = writeBinaryStl(box(10, 20, 30));
    expect(bytes.length).toBe(684);
    expect(binaryStlLength(100_000)).toBe(5_000_084);
    expect([...bytes.subarray(80, 84)]).toEqual([12, 0, 0, 0]);
    expect(announcedTriangles(bytes)).toBe(12);
  });

  // G11: the test is the length, not the word in the header.
  test('is known by its length, also when its header begins with solid', () => {
    const bytes = withHeader(writeBinaryStl(box(10, 20, 30)), 'solid part');
    expect(isBinaryStl(bytes)).toBe(true);
    expect(isBinaryStl(bytes.subarray(0, 683))).toBe(false);
    expect(isBinaryStl(writeAsciiStl(box(10, 20, 30), 'part'))).toBe(false);
    expect(solidOf(readBinaryStl(bytes, 1)).volume).toBeCloseTo(6000, 9);
  });

  test('joins equal corners', () => {
    const mesh = readBinaryStl(writeBinaryStl(box(10, 20, 30)), 1);
    expect(mesh.positions.length / 3).toBe(8);
    expect(mesh.triangles.length / 3).toBe(12);
  });

  test.each(MESHES)('of %s is read by three as it was written', (_name, mesh) => {
    const bytes = writeBinaryStl(mesh);
    const geometry = new STLLoader().parse(bytes.buffer as ArrayBuffer);
    expect(Array.from(geometry.getAttribute('position').array)).toEqual(corners(mesh).map(Math.fround));
    const normals = geometry.getAttribute('normal');
    for (let corner = 0; corner < normals.count; corner++) {
      expect(Math.hypot(normals.getX(corner), normals.getY(corner), normals.getZ(corner))).toBeCloseTo(1, 6);
    }
  });

  test.each(MESHES)('of %s is read as three has written it', (_name, mesh) => {
    const view = new STLExporter().parse(new ThreeMesh(threeGeometry(mesh)), { binary: true }) as DataView;
    const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
    expect(corners(readBinaryStl(bytes, 1))).toEqual(corners(mesh).map(Math.fround));
  });

  test('with a coordinate that is no number is refused', () => {
    const bytes = writeBinaryStl(box(10, 20, 30));
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 1e30]) {
      const broken = bytes.slice();
      new DataView(broken.buffer).setFloat32(84 + 50 + 12 + 4, value, true);
      expect(() => readBinaryStl(broken, 1)).toThrow(
        /^Triangle 2 has a corner at \(.*\) mm, which is no place in a part\./,
      );
    }
  });
});

describe('ASCII STL', () => {
  test.each(MESHES)('of %s is read by three as it was written', (_name, mesh) => {
    const text = new TextDecoder().decode(writeAsciiStl(mesh, 'part'));
    const geometry = new STLLoader().parse(text);
    expect(Array.from(geometry.getAttribute('position').array)).toEqual(corners(mesh).map(Math.fround));
  });

  test.each(MESHES)('of %s is read as three has written it', (_name, mesh) => {
    const text = new STLExporter().parse(new ThreeMesh(threeGeometry(mesh))) as unknown as string;
    expect(corners(readAsciiStl(encoder.encode(text), 1))).toEqual(corners(mesh).map(Math.fround));
  });

  test.each(MESHES)('of %s comes back with every digit', (_name, mesh) => {
    expect(corners(readAsciiStl(writeAsciiStl(mesh, 'part'), 1))).toEqual(corners(mesh));
  });

  test('may have several solids, capitals, a byte order mark, other line ends and names with keywords', () => {
    const facet =
      'FACET NORMAL 0 0 1\r\n OUTER LOOP\r\n  VERTEX 0 0 0\r\n  VERTEX 1e0 0 0\r\n  VERTEX 0 +1.5 -0\r\n ENDLOOP\r\nENDFACET\r\n';
    const text = `\ufeffsolid facet endsolid\r\n${facet}endsolid facet\r\nsolid\r\n${facet}${facet}endsolid`;
    const bytes = encoder.encode(text);
    expect(looksLikeAsciiStl(bytes)).toBe(true);
    const mesh = readAsciiStl(bytes, 2);
    expect(mesh.triangles.length / 3).toBe(3);
    expect(Array.from(mesh.positions)).toEqual([0, 0, 0, 2, 0, 0, 0, 3, 0]);
  });

  test.each([
    ['vertex 0 0', 'On line 4, where a coordinate should be, stands "vertex".'],
    ['vertex 0 0 zero', 'On line 3, where a coordinate should be, stands "zero".'],
    ['vertex 0 0 0\nvertex 0 0 nan', 'On line 4, where a coordinate should be, stands "nan".'],
    ['edge 0 0 0', 'On line 3, where vertex should be, stands "edge".'],
  ])('with the line "%s" is refused at its line', (line, message) => {
    const text = `solid a\nfacet normal 0 0 1 outer loop\n${line}\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\nendsolid a\n`;
    expect(() => readAsciiStl(encoder.encode(text), 1)).toThrow(message);
  });

  test('with an infinite coordinate is refused at its line', () => {
    const text = 'solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 Infinity\n';
    expect(() => readAsciiStl(encoder.encode(text), 1)).toThrow('Line 4 has a corner at (0, 0, Infinity) mm');
  });

  test('without a triangle is refused', () => {
    expect(() => readAsciiStl(encoder.encode('solid a\nendsolid a\n'), 1)).toThrow(MeshError);
    expect(() => readAsciiStl(encoder.encode('solid a\nendsolid a\n'), 1)).toThrow(
      'The file holds no triangle.',
    );
  });
});
