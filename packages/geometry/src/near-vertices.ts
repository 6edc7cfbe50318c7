import { type Mesh, meshDiagonal } from './mesh.ts';

/** Share of the diagonal of the part below which two corners of an open edge are taken as one. */
const NEAR_SHARE = 1e-5;

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
  const cells = new Map<string, number[]>();
  const numbers = new Map<number, number>();
  const cell = (value: number): number => Math.floor(value / distance);
  for (const vertex of vertices) {
    const x = positions[3 * vertex];
    const y = positions[3 * vertex + 1];
    const z = positions[3 * vertex + 2];
    let near = -1;
    for (let step = 0; step < 27 && near < 0; step++) {
      const key = `${cell(x) + (step % 3) - 1} ${cell(y) + (Math.floor(step / 3) % 3) - 1} ${cell(z) + Math.floor(step / 9) - 1}`;
      for (const other of cells.get(key) ?? []) {
        const gap = Math.hypot(
          positions[3 * other] - x,
          positions[3 * other + 1] - y,
          positions[3 * other + 2] - z,
        );
        if (gap <= distance) near = other;
      }
    }
    if (near >= 0) {
      numbers.set(vertex, near);
      continue;
    }
    const key = `${cell(x)} ${cell(y)} ${cell(z)}`;
    const there = cells.get(key);
    if (there === undefined) cells.set(key, [vertex]);
    else there.push(vertex);
  }
  if (numbers.size === 0) return { mesh, joined: 0, distance };
  const triangles = mesh.triangles.map((vertex) => numbers.get(vertex) ?? vertex);
  return { mesh: { positions, triangles }, joined: numbers.size, distance };
}
