import type { Mesh } from '../mesh.ts';

/** Lines of a grid along its three directions, ascending. */
interface GridLines {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly z: readonly number[];
}

/** What is made of the cells of a grid. */
export interface GridSolid {
  readonly lines: GridLines;
  /** Whether a cell is filled; cells are named by the lower ends of their sides, in the coordinates of the lines. */
  readonly isFilled: (x: number, y: number, z: number) => boolean;
  /** Where a crossing of lines goes; keeps right-handed cells right-handed. Left out: it stays. */
  readonly place?: (x: number, y: number, z: number) => readonly [number, number, number];
  /** The last line along x is the first one again: a ring. */
  readonly isRing?: boolean;
}

/** Places are rounded to a thousandth of a mm, so that engines whose sine differs in the last digit agree. */
const PER_MILLIMETRE = 1000;

type Step = readonly [number, number, number];

/** Corners of the six faces of a cell, counter-clockwise from outside, each with the way to the neighbour. */
const FACES: readonly { readonly out: Step; readonly corners: readonly Step[] }[] = [
  {
    out: [-1, 0, 0],
    corners: [
      [0, 0, 0],
      [0, 0, 1],
      [0, 1, 1],
      [0, 1, 0],
    ],
  },
  {
    out: [1, 0, 0],
    corners: [
      [1, 0, 0],
      [1, 1, 0],
      [1, 1, 1],
      [1, 0, 1],
    ],
  },
  {
    out: [0, -1, 0],
    corners: [
      [0, 0, 0],
      [1, 0, 0],
      [1, 0, 1],
      [0, 0, 1],
    ],
  },
  {
    out: [0, 1, 0],
    corners: [
      [0, 1, 0],
      [0, 1, 1],
      [1, 1, 1],
      [1, 1, 0],
    ],
  },
  {
    out: [0, 0, -1],
    corners: [
      [0, 0, 0],
      [0, 1, 0],
      [1, 1, 0],
      [1, 0, 0],
    ],
  },
  {
    out: [0, 0, 1],
    corners: [
      [0, 0, 1],
      [1, 0, 1],
      [1, 1, 1],
      [0, 1, 1],
    ],
  },
];

/**
 * A closed mesh around the filled cells of a grid whose crossings may be moved, so that squares become circles or a
 * grid becomes a tube. Filled cells that touch must share a face, else the mesh is not manifold.
 */
export function gridSolid({ lines, isFilled, place, isRing = false }: GridSolid): Mesh {
  const { x, y, z } = lines;
  const cellsX = x.length - 1;
  const around = (i: number): number => (isRing ? (i + cellsX) % cellsX : i);
  const filled = (i: number, j: number, k: number): boolean =>
    i >= 0 &&
    i < cellsX &&
    j >= 0 &&
    j < y.length - 1 &&
    k >= 0 &&
    k < z.length - 1 &&
    isFilled(x[i], y[j], z[k]);
  const numbers = new Map<number, number>();
  const positions: number[] = [];
  const vertex = (i: number, j: number, k: number): number => {
    const crossing = (around(i) * y.length + j) * z.length + k;
    let number = numbers.get(crossing);
    if (number === undefined) {
      number = numbers.size;
      numbers.set(crossing, number);
      const at = [x[around(i)], y[j], z[k]] as const;
      for (const value of place === undefined ? at : place(...at)) {
        positions.push(Math.round(value * PER_MILLIMETRE) / PER_MILLIMETRE + 0);
      }
    }
    return number;
  };
  const triangles: number[] = [];
  for (let i = 0; i < cellsX; i++) {
    for (let j = 0; j + 1 < y.length; j++) {
      for (let k = 0; k + 1 < z.length; k++) {
        if (!filled(i, j, k)) continue;
        for (const { out, corners } of FACES) {
          if (filled(around(i + out[0]), j + out[1], k + out[2])) continue;
          const [a, b, c, d] = corners.map((step) => vertex(i + step[0], j + step[1], k + step[2]));
          triangles.push(a, b, c, a, c, d);
        }
      }
    }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Ascending lines without repetitions. */
export function sortedLines(...values: readonly number[]): number[] {
  return [...new Set(values)].sort((one, other) => one - other);
}
