/**
 * A surface made of triangles, lengths in mm. Corners of a triangle run counter-clockwise when seen from outside.
 */
export interface Mesh {
  /** x, y and z of one vertex after the other. */
  readonly positions: Float64Array;
  /** Three vertex numbers for every triangle. */
  readonly triangles: Uint32Array;
}

/** Smallest and largest coordinate along x, y and z. */
export interface Bounds {
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
}

/** The box around the vertices that triangles use. Of a mesh without triangles all are infinite. */
export function meshBounds(mesh: Mesh): Bounds {
  const { positions, triangles } = mesh;
  let lowX = Number.POSITIVE_INFINITY;
  let lowY = lowX;
  let lowZ = lowX;
  let highX = Number.NEGATIVE_INFINITY;
  let highY = highX;
  let highZ = highX;
  for (let corner = 0; corner < triangles.length; corner++) {
    const at = 3 * triangles[corner];
    const x = positions[at];
    const y = positions[at + 1];
    const z = positions[at + 2];
    if (x < lowX) lowX = x;
    if (x > highX) highX = x;
    if (y < lowY) lowY = y;
    if (y > highY) highY = y;
    if (z < lowZ) lowZ = z;
    if (z > highZ) highZ = z;
  }
  return { low: [lowX, lowY, lowZ], high: [highX, highY, highZ] };
}

/** Length of the diagonal of the box around the mesh, mm. */
export function meshDiagonal(mesh: Mesh): number {
  const { low, high } = meshBounds(mesh);
  return Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
}
