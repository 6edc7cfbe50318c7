import { type HalfEdges, nextSide, visitEdges } from './half-edges.ts';
import type { Mesh } from './mesh.ts';

/** A mesh whose holes were closed, and how many there were. */
export interface LiddedMesh {
  readonly mesh: Mesh;
  readonly holes: number;
}

/**
 * Closes every hole by a fan of triangles to the middle of its rim. Sides that no side runs against always make up
 * closed rims (the boundary of a chain of triangles has no boundary), so the result is closed: every measure that is
 * a sum over triangles no longer depends on where the part stands. Flat holes are closed exactly.
 */
export function withLids(mesh: Mesh, edges: HalfEdges): LiddedMesh {
  const { triangles, positions } = mesh;
  /** Sides, each as often as it lacks one that runs against it. */
  const rim: number[] = [];
  visitEdges(edges, (from, to, forward) => {
    const backward = to - from - forward;
    for (let at = from + backward; at < from + forward; at++) rim.push(edges.sides[at - backward]);
    for (let at = from + forward; at < from + backward; at++) rim.push(edges.sides[at]);
  });
  if (rim.length === 0) return { mesh, holes: 0 };
  const holes = new RimGroups();
  for (const side of rim) holes.join(triangles[side], triangles[nextSide(side)]);
  const numbers = new Map<number, number>();
  const sums: number[] = [];
  for (const side of rim) {
    const root = holes.root(triangles[side]);
    let hole = numbers.get(root);
    if (hole === undefined) {
      hole = numbers.size;
      numbers.set(root, hole);
      sums.push(0, 0, 0, 0);
    }
    const at = 3 * triangles[side];
    sums[4 * hole]++;
    for (let axis = 0; axis < 3; axis++) sums[4 * hole + 1 + axis] += positions[at + axis];
  }
  const longer = new Float64Array(positions.length + 3 * numbers.size);
  longer.set(positions);
  for (let hole = 0; hole < numbers.size; hole++) {
    for (let axis = 0; axis < 3; axis++) {
      longer[positions.length + 3 * hole + axis] = sums[4 * hole + 1 + axis] / sums[4 * hole];
    }
  }
  const more = new Uint32Array(triangles.length + 3 * rim.length);
  more.set(triangles);
  let at = triangles.length;
  for (const side of rim) {
    const hole = numbers.get(holes.root(triangles[side])) ?? 0;
    more[at++] = triangles[nextSide(side)];
    more[at++] = triangles[side];
    more[at++] = positions.length / 3 + hole;
  }
  return { mesh: { positions: longer, triangles: more }, holes: numbers.size };
}

/** Vertices grouped by the rims they lie on. */
class RimGroups {
  readonly #above = new Map<number, number>();

  root(vertex: number): number {
    let root = vertex;
    for (let next = this.#above.get(root); next !== undefined; next = this.#above.get(root)) root = next;
    for (let at = vertex; at !== root; ) {
      const next = this.#above.get(at) ?? root;
      this.#above.set(at, root);
      at = next;
    }
    return root;
  }

  join(one: number, other: number): void {
    const first = this.root(one);
    const second = this.root(other);
    if (first !== second) this.#above.set(first, second);
  }
}
