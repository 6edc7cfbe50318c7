import type { Mesh } from './mesh.ts';

/** A turn of the part: three rows of three numbers; a point p goes to (row 1 · p, row 2 · p, row 3 · p). */
export type Rotation = readonly [number, number, number, number, number, number, number, number, number];

/** A mesh as it stands on the platform: its box begins at (0, 0, 0). Lengths are mm. */
export interface OrientedMesh {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly triangles: Uint32Array;
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  /** What lies below this height rests on the platform, mm. */
  readonly restHeight: number;
}

/** The part as the file has it. */
export const AS_GIVEN: Rotation = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/**
 * What is at most this far above the lowest point lies on the platform: a share of the height, and never more than a
 * fraction of a thin layer, mm. Coordinates of STL files are rounded, so a flat bottom is not exactly flat once turned.
 */
const REST_SHARE = 1e-4;
const HIGHEST_REST = 0.01;

/** Turns a mesh and puts it on the platform. Vertices that no triangle uses do not count. */
export function orientedMesh(mesh: Mesh, rotation: Rotation): OrientedMesh {
  const { positions, triangles } = mesh;
  const count = positions.length / 3;
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  const z = new Float64Array(count);
  const [xx, xy, xz, yx, yy, yz, zx, zy, zz] = rotation;
  for (let vertex = 0; vertex < count; vertex++) {
    const px = positions[3 * vertex];
    const py = positions[3 * vertex + 1];
    const pz = positions[3 * vertex + 2];
    x[vertex] = xx * px + xy * py + xz * pz;
    y[vertex] = yx * px + yy * py + yz * pz;
    z[vertex] = zx * px + zy * py + zz * pz;
  }
  const width = movedToZero(x, triangles);
  const depth = movedToZero(y, triangles);
  const height = movedToZero(z, triangles);
  const restHeight = Math.min(HIGHEST_REST, REST_SHARE * height);
  return { x, y, z, triangles, width, depth, height, restHeight };
}

/** Shifts coordinates so that the lowest used one is zero, and returns the highest. */
function movedToZero(values: Float64Array, triangles: Uint32Array): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let corner = 0; corner < triangles.length; corner++) {
    const value = values[triangles[corner]];
    if (value < low) low = value;
    if (value > high) high = value;
  }
  for (let vertex = 0; vertex < values.length; vertex++) values[vertex] -= low;
  return high - low;
}
