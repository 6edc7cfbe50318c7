import { type Mesh, meshDiagonal } from './mesh.ts';

/** A flat face on which a part can be laid. */
export interface FlatFace {
  /** Unit vector out of the part. */
  readonly normal: readonly [number, number, number];
  /** mm2. */
  readonly area: number;
}

/** Directions are gathered in cells of this many steps from -1 to 1 along each axis: about four degrees. */
const STEPS = 33;
/** Faces below this share of the surface are no ground to lay a part on. Common practice, no source. */
const SMALLEST_SHARE = 0.005;
/** How far within the outermost plane a triangle may be to lie in it, a share of the diagonal. */
const PLANE_SHARE = 1e-4;

/**
 * The largest flat faces that lie in a plane with the whole part on one side, largest first: triangles are gathered
 * by their normals, weighted by area, and those in the outermost plane of each direction are added up.
 */
export function flatFaces(mesh: Mesh, most: number): FlatFace[] {
  const { triangles } = mesh;
  const count = triangles.length / 3;
  const doubledNormals = new Float64Array(3 * count);
  const sums = new Float64Array(3 * STEPS ** 3);
  const areas = new Float64Array(STEPS ** 3);
  let surface = 0;
  for (let triangle = 0; triangle < count; triangle++) {
    const length = writeNormal(mesh, triangle, doubledNormals);
    if (length === 0) continue;
    const at = 3 * triangle;
    const cell = cellOf(
      doubledNormals[at] / length,
      doubledNormals[at + 1] / length,
      doubledNormals[at + 2] / length,
    );
    areas[cell] += length / 2;
    surface += length / 2;
    for (let axis = 0; axis < 3; axis++) sums[3 * cell + axis] += doubledNormals[at + axis];
  }
  const cells = Array.from(areas, (area, cell) => ({ area, cell }))
    .filter(({ area }) => area >= SMALLEST_SHARE * surface)
    .sort((one, other) => other.area - one.area)
    .slice(0, 4 * most);
  const depth = PLANE_SHARE * meshDiagonal(mesh);
  return cells
    .map(({ cell }) => outermostFace(mesh, doubledNormals, sums.subarray(3 * cell, 3 * cell + 3), depth))
    .filter(({ area }) => area >= SMALLEST_SHARE * surface)
    .sort((one, other) => other.area - one.area)
    .slice(0, most);
}

/** Area of the triangles that lie in the outermost plane of a direction and face along it. */
function outermostFace(
  mesh: Mesh,
  doubledNormals: Float64Array,
  direction: Float64Array,
  depth: number,
): FlatFace {
  const { positions, triangles } = mesh;
  const length = Math.hypot(direction[0], direction[1], direction[2]);
  const [x, y, z] = [direction[0] / length, direction[1] / length, direction[2] / length];
  const along = new Float64Array(positions.length / 3);
  let outermost = Number.NEGATIVE_INFINITY;
  for (let vertex = 0; vertex < along.length; vertex++) {
    along[vertex] = x * positions[3 * vertex] + y * positions[3 * vertex + 1] + z * positions[3 * vertex + 2];
  }
  for (let corner = 0; corner < triangles.length; corner++) {
    outermost = Math.max(outermost, along[triangles[corner]]);
  }
  let area = 0;
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const lowest = Math.min(
      along[triangles[corner]],
      along[triangles[corner + 1]],
      along[triangles[corner + 2]],
    );
    if (lowest < outermost - depth) continue;
    area +=
      (x * doubledNormals[corner] + y * doubledNormals[corner + 1] + z * doubledNormals[corner + 2]) / 2;
  }
  return { normal: [x, y, z], area };
}

function cellOf(x: number, y: number, z: number): number {
  const half = (STEPS - 1) / 2;
  const step = (value: number): number => Math.round(value * half) + half;
  return (step(x) * STEPS + step(y)) * STEPS + step(z);
}

/** Writes the normal of a triangle, as long as twice its area, and returns this length. */
function writeNormal(mesh: Mesh, triangle: number, normals: Float64Array): number {
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
  normals[3 * triangle] = x;
  normals[3 * triangle + 1] = y;
  normals[3 * triangle + 2] = z;
  return Math.sqrt(x * x + y * y + z * z);
}
