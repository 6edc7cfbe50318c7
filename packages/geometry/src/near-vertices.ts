import { type Mesh, meshDiagonal } from './mesh.ts';

/** Share of the diagonal of the part below which two corners of an open edge are taken as one. */
const NEAR_SHARE = 1e-5;
/**
 * Corners are swept along this direction. It is oblique to the axes and to their usual angles, so that corners in one
 * plane of a part seldom come at the same moment.
 */
const SWEEP = [0.5417, 0.3103, 0.7812] as const;

/** A mesh with near corners joined, and how many were given up for another one. */
export interface JoinedMesh {
  readonly mesh: Mesh;
  readonly joined: number;
  /** Distance below which corners were joined, mm. */
  readonly distance: number;
}

/** Joins those of the given vertices that lie nearer to each other than a hundred-thousandth of the diagonal. */
export function nearVerticesJoined(mesh: Mesh, vertices: readonly number[]): JoinedMesh {
  const distance = NEAR_SHARE * meshDiagonal(mesh);
  const { positions } = mesh;
  const along = (vertex: number): number =>
    SWEEP[0] * positions[3 * vertex] +
    SWEEP[1] * positions[3 * vertex + 1] +
    SWEEP[2] * positions[3 * vertex + 2];
  const swept = vertices
    .map((vertex) => ({ vertex, place: along(vertex) }))
    .sort((one, other) => one.place - other.place);
  const numbers = new Map<number, number>();
  for (let index = 0; index < swept.length; index++) {
    const { vertex, place } = swept[index];
    const near = nearBefore(positions, swept, index, distance, place);
    if (near !== null) numbers.set(vertex, numbers.get(near) ?? near);
  }
  if (numbers.size === 0) return { mesh, joined: 0, distance };
  const triangles = mesh.triangles.map((vertex) => numbers.get(vertex) ?? vertex);
  return { mesh: { positions, triangles }, joined: numbers.size, distance };
}

/** The last vertex before one in the sweep that lies within the distance; null when there is none. */
function nearBefore(
  positions: Float64Array,
  swept: readonly { readonly vertex: number; readonly place: number }[],
  index: number,
  distance: number,
  place: number,
): number | null {
  const at = 3 * swept[index].vertex;
  for (let before = index - 1; before >= 0 && place - swept[before].place <= distance; before--) {
    const other = 3 * swept[before].vertex;
    const x = positions[other] - positions[at];
    const y = positions[other + 1] - positions[at + 1];
    const z = positions[other + 2] - positions[at + 2];
    if (x * x + y * y + z * z <= distance * distance) return swept[before].vertex;
  }
  return null;
}
