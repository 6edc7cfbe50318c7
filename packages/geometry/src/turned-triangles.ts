import { type HalfEdges, visitEdges } from './half-edges.ts';
import type { Mesh } from './mesh.ts';

const NONE = -1;

/** Triangles that face as their neighbours do, and how many were turned for it. */
export interface TurnedTriangles {
  readonly triangles: Uint32Array;
  readonly turned: number;
}

/**
 * Turns triangles until neighbours over an edge of two triangles face the same way. In every connected piece the way
 * that most of the area faced is kept, so that voids stay voids. A surface with one side only keeps some edges.
 */
export function turnedAlike(mesh: Mesh, edges: HalfEdges): TurnedTriangles {
  const { triangles } = mesh;
  const mates = mateOfSides(triangles.length, edges);
  const count = triangles.length / 3;
  /** 0: not yet seen, 1: stays, 2: faces against the first triangle of its piece. */
  const state = new Uint8Array(count);
  const pending: number[] = [];
  let turned = 0;
  const result = triangles.slice();
  for (let first = 0; first < count; first++) {
    if (state[first] !== 0) continue;
    state[first] = 1;
    pending.push(first);
    const piece: number[] = [];
    const areas = [0, 0, 0];
    for (let triangle = pending.pop(); triangle !== undefined; triangle = pending.pop()) {
      piece.push(triangle);
      areas[state[triangle]] += triangleArea(mesh, triangle);
      for (let side = 3 * triangle; side < 3 * triangle + 3; side++) {
        const mate = mates[side];
        if (mate === NONE) continue;
        const other = Math.floor(mate / 3);
        if (state[other] !== 0) continue;
        const sameDirection = triangles[side] === triangles[mate];
        state[other] = sameDirection ? 3 - state[triangle] : state[triangle];
        pending.push(other);
      }
    }
    const turn = areas[2] > areas[1] ? 1 : 2;
    for (const triangle of piece) {
      if (state[triangle] !== turn) continue;
      turned++;
      turnTriangle(result, triangle);
    }
  }
  return { triangles: result, turned };
}

/** Turns all triangles. */
export function insideOut(triangles: Uint32Array): Uint32Array {
  const result = triangles.slice();
  for (let triangle = 0; triangle < result.length / 3; triangle++) turnTriangle(result, triangle);
  return result;
}

function turnTriangle(triangles: Uint32Array, triangle: number): void {
  const second = triangles[3 * triangle + 1];
  triangles[3 * triangle + 1] = triangles[3 * triangle + 2];
  triangles[3 * triangle + 2] = second;
}

/** For every side the one that shares its edge, where exactly two do. */
function mateOfSides(sideCount: number, edges: HalfEdges): Int32Array {
  const mates = new Int32Array(sideCount).fill(NONE);
  visitEdges(edges, (from, to) => {
    if (to - from !== 2) return;
    mates[edges.sides[from]] = edges.sides[from + 1];
    mates[edges.sides[from + 1]] = edges.sides[from];
  });
  return mates;
}

/** Area of one triangle, mm2. */
export function triangleArea(mesh: Mesh, triangle: number): number {
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
  return Math.sqrt(x * x + y * y + z * z) / 2;
}
