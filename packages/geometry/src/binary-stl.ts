import type { Mesh } from './mesh.ts';
import { MeshError } from './mesh-error.ts';
import { isPlace, refusePlace, refuseTooMany } from './read-limits.ts';
import { VertexTable } from './vertex-table.ts';

/** Bytes of header and count, and of one facet: normal, three corners as float32, and two bytes of attributes. */
const HEADER_BYTES = 84;
const FACET_BYTES = 50;

/** Triangles that the header announces, or null when the file is shorter than a header. */
export function announcedTriangles(bytes: Uint8Array): number | null {
  return bytes.length < HEADER_BYTES ? null : view(bytes).getUint32(80, true);
}

/**
 * Whether the length is the one that the header announces, 84 + 50 n. The header itself decides nothing: that of a
 * binary file may begin with "solid" too.
 */
export function isBinaryStl(bytes: Uint8Array): boolean {
  const count = announcedTriangles(bytes);
  return count !== null && bytes.length === binaryStlLength(count);
}

/** Length of a binary STL file of so many triangles, bytes. */
export function binaryStlLength(triangles: number): number {
  return HEADER_BYTES + FACET_BYTES * triangles;
}

/**
 * Reads a binary STL file; equal corners become one vertex. Normals and attributes are left aside: the order of the
 * corners says where the outside is.
 *
 * @param scale mm in the unit of the file.
 * @throws MeshError when the file is too short, holds no triangle, too many, or coordinates that are no numbers.
 */
export function readBinaryStl(bytes: Uint8Array, scale: number): Mesh {
  const count = announcedTriangles(bytes);
  if (count === null) {
    throw new MeshError(
      `The file has ${bytes.length} bytes, and the header of a binary STL file alone has ${HEADER_BYTES}.`,
      'The file is cut off: export or copy it again.',
    );
  }
  if (count === 0) {
    throw new MeshError('The file holds no triangle.', 'Export the part again, with the body selected.');
  }
  if (binaryStlLength(count) > bytes.length) {
    const there = Math.floor((bytes.length - HEADER_BYTES) / FACET_BYTES);
    throw new MeshError(
      `The file announces ${count.toLocaleString('en-GB')} triangles and has room for ${there.toLocaleString('en-GB')}.`,
      'It is cut off or no STL file: export or copy it again.',
    );
  }
  refuseTooMany(count, 'triangles');
  const data = view(bytes);
  const triangles = new Uint32Array(3 * count);
  const table = new VertexTable();
  for (let triangle = 0; triangle < count; triangle++) {
    let at = HEADER_BYTES + FACET_BYTES * triangle + 12;
    for (let corner = 3 * triangle; corner < 3 * triangle + 3; corner++) {
      const x = data.getFloat32(at, true) * scale;
      const y = data.getFloat32(at + 4, true) * scale;
      const z = data.getFloat32(at + 8, true) * scale;
      if (!isPlace(x, y, z)) refusePlace(x, y, z, `Triangle ${triangle + 1}`);
      triangles[corner] = table.add(x, y, z);
      at += 12;
    }
  }
  return { positions: table.positions(), triangles };
}

/** Writes a binary STL file in mm, with outward normals; coordinates are rounded to float32. */
export function writeBinaryStl(mesh: Mesh): Uint8Array {
  const { positions, triangles } = mesh;
  const count = triangles.length / 3;
  const bytes = new Uint8Array(binaryStlLength(count));
  const data = view(bytes);
  data.setUint32(80, count, true);
  for (let triangle = 0; triangle < count; triangle++) {
    let at = HEADER_BYTES + FACET_BYTES * triangle;
    for (const component of facetNormal(mesh, triangle)) {
      data.setFloat32(at, component, true);
      at += 4;
    }
    for (let corner = 3 * triangle; corner < 3 * triangle + 3; corner++) {
      for (let axis = 0; axis < 3; axis++) {
        data.setFloat32(at, positions[3 * triangles[corner] + axis], true);
        at += 4;
      }
    }
  }
  return bytes;
}

/** Outward unit normal of a triangle; zero where the triangle has no area. */
export function facetNormal(mesh: Mesh, triangle: number): [number, number, number] {
  const { positions, triangles } = mesh;
  const a = 3 * triangles[3 * triangle];
  const b = 3 * triangles[3 * triangle + 1];
  const c = 3 * triangles[3 * triangle + 2];
  const ux = positions[b] - positions[a];
  const uy = positions[b + 1] - positions[a + 1];
  const uz = positions[b + 2] - positions[a + 2];
  const vx = positions[c] - positions[a];
  const vy = positions[c + 1] - positions[a + 1];
  const vz = positions[c + 2] - positions[a + 2];
  const x = uy * vz - uz * vy;
  const y = uz * vx - ux * vz;
  const z = ux * vy - uy * vx;
  const length = Math.sqrt(x * x + y * y + z * z);
  return length > 0 ? [x / length, y / length, z / length] : [0, 0, 0];
}

function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
