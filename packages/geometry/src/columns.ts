import { MeshError } from './mesh-error.ts';
import type { OrientedMesh } from './oriented-mesh.ts';

/** Crossings of a vertical line with the surface: into the part, into it through an overhang, out of it. */
export const LEAVES = 0;
const ENTERS = 1;
export const ENTERS_BY_OVERHANG = 2;

/**
 * Vertical lines through the middles of a grid of cells over the box of the part, and where they cross its surface.
 */
export interface Columns {
  /** Area of a cell, mm2. */
  readonly cellArea: number;
  readonly count: number;
  /** Where the crossings of a column begin; one more entry than columns. */
  readonly starts: Uint32Array;
  /** Heights of the crossings of each column, ascending, mm. */
  readonly heights: Float64Array;
  readonly kinds: Uint8Array;
}

/** About so many columns stand over the box: cells of 0.4 mm for a box of 100 x 100 mm. */
const COLUMN_COUNT = 65_536;
/**
 * Most crossings that are kept. A lattice has some millions of them; a surface that lies over itself more often gets
 * fewer columns, so that memory and time stay bounded.
 */
const MOST_CROSSINGS = 8_000_000;
const FEWEST_COLUMNS = 1024;
/** Columns up to this length are sorted by insertion. */
const SHORT = 128;
/** Cells of a narrow box are no longer square: across it there are at least a sixteenth of those across a square. */
const NARROWEST = 16;

/**
 * Sends a vertical line through the middle of every cell and keeps where it crosses triangles. Cells fill the box
 * exactly. A line through an edge crosses one of the two triangles: rows and columns count as inside from the lower
 * to below the upper end, and the place on an edge is worked out from the same end on both sides, so the crossings
 * of a closed mesh come in pairs.
 *
 * @param overhangSlope triangles whose unit normal has a z below this are overhangs, -1 to 0.
 */
export function columnsOf(part: OrientedMesh, overhangSlope: number): Columns {
  const wanted = columnsFor(part);
  const cell = Math.sqrt((part.width * part.depth) / wanted);
  const across = cellsAlong(part.width, cell, wanted);
  const along = cellsAlong(part.depth, cell, wanted);
  const scaleX = across / part.width;
  const scaleY = along / part.depth;
  const count = across * along;
  const starts = new Uint32Array(count + 1);
  // Cell middles have whole numbers as coordinates.
  const x = part.x.map((value) => value * scaleX - 0.5);
  const y = part.y.map((value) => value * scaleY - 0.5);
  scan(part, x, y, across, overhangSlope, (column) => {
    starts[column + 1]++;
  });
  for (let column = 0; column < count; column++) starts[column + 1] += starts[column];
  const heights = new Float64Array(starts[count]);
  const kinds = new Uint8Array(starts[count]);
  const free = starts.slice(0, count);
  scan(part, x, y, across, overhangSlope, (column, height, kind) => {
    const place = free[column]++;
    heights[place] = height;
    kinds[place] = kind;
  });
  for (let column = 0; column < count; column++) {
    sortColumn(heights, kinds, starts[column], starts[column + 1]);
  }
  return { cellArea: (part.width * part.depth) / count, count, starts, heights, kinds };
}

/**
 * As many columns as the surface allows: each crosses every layer of it that lies above its cell.
 *
 * @throws MeshError when the surface lies over itself so often that it cannot be the skin of a part.
 */
function columnsFor(part: OrientedMesh): number {
  const { x, y, triangles } = part;
  let projected = 0;
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const a = triangles[corner];
    const b = triangles[corner + 1];
    const c = triangles[corner + 2];
    projected += Math.abs((x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a])) / 2;
  }
  const layers = projected / (part.width * part.depth);
  const columns = Math.min(COLUMN_COUNT, MOST_CROSSINGS / layers);
  if (columns >= FEWEST_COLUMNS) return columns;
  throw new MeshError(
    `The surface lies ${Math.round(layers).toLocaleString('en-GB')} times over itself, which no part does.`,
    'The file is damaged or no mesh of a part: export it again.',
  );
}

/** Sorts the crossings of a column by height; where heights are equal, the way out comes first. */
function sortColumn(heights: Float64Array, kinds: Uint8Array, start: number, end: number): void {
  if (end - start > SHORT) {
    const order = Array.from({ length: end - start }, (_, index) => start + index);
    order.sort((one, other) => heights[one] - heights[other] || kinds[one] - kinds[other]);
    const sortedHeights = order.map((index) => heights[index]);
    const sortedKinds = order.map((index) => kinds[index]);
    heights.set(sortedHeights, start);
    kinds.set(sortedKinds, start);
    return;
  }
  for (let next = start + 1; next < end; next++) {
    const height = heights[next];
    const kind = kinds[next];
    let place = next - 1;
    while (
      place >= start &&
      (heights[place] > height || (heights[place] === height && kinds[place] > kind))
    ) {
      heights[place + 1] = heights[place];
      kinds[place + 1] = kinds[place];
      place--;
    }
    heights[place + 1] = height;
    kinds[place + 1] = kind;
  }
}

function cellsAlong(side: number, cell: number, wanted: number): number {
  const square = Math.sqrt(wanted);
  return Math.round(Math.min(square * NARROWEST, Math.max(square / NARROWEST, side / cell)));
}

function scan(
  part: OrientedMesh,
  x: Float64Array,
  y: Float64Array,
  across: number,
  overhangSlope: number,
  cross: (column: number, height: number, kind: number) => void,
): void {
  const { triangles, z, restHeight } = part;
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const a = triangles[corner];
    const b = triangles[corner + 1];
    const c = triangles[corner + 2];
    const ya = y[a];
    const yb = y[b];
    const yc = y[c];
    const firstRow = Math.ceil(Math.min(ya, yb, yc));
    const endY = Math.max(ya, yb, yc);
    if (firstRow >= endY) continue;
    const xa = x[a];
    const xb = x[b];
    const xc = x[c];
    if (Math.ceil(Math.min(xa, xb, xc)) >= Math.max(xa, xb, xc)) continue;
    const za = z[a];
    const lowZ = Math.min(za, z[b], z[c]);
    const highZ = Math.max(za, z[b], z[c]);
    const ux = xb - xa;
    const uy = yb - ya;
    const uz = z[b] - za;
    const vx = xc - xa;
    const vy = yc - ya;
    const vz = z[c] - za;
    const normalZ = ux * vy - uy * vx;
    const slopeX = normalZ === 0 ? 0 : (uz * vy - uy * vz) / normalZ;
    const slopeY = normalZ === 0 ? 0 : (ux * vz - uz * vx) / normalZ;
    let enters = -1;
    for (let row = firstRow; row < endY; row++) {
      // Of the three sides two cross the row: one upwards, one downwards.
      let up = 0;
      let down = 0;
      if (ya <= row !== yb <= row) {
        const place = crossing(a, b, xa, ya, xb, yb, row);
        if (ya <= row) up = place;
        else down = place;
      }
      if (yb <= row !== yc <= row) {
        const place = crossing(b, c, xb, yb, xc, yc, row);
        if (yb <= row) up = place;
        else down = place;
      }
      if (yc <= row !== ya <= row) {
        const place = crossing(c, a, xc, yc, xa, ya, row);
        if (yc <= row) up = place;
        else down = place;
      }
      // Seen from above, the triangle turns counter-clockwise when its right side runs upwards: it faces up.
      const facesUp = down < up;
      const end = facesUp ? up : down;
      for (let column = Math.ceil(facesUp ? down : up); column < end; column++) {
        const plane = za + slopeX * (column - xa) + slopeY * (row - ya);
        const height = Math.min(highZ, Math.max(lowZ, plane));
        if (!facesUp && enters < 0) {
          const overhangs = highZ > restHeight && normalSlope(part, a, b, c) < overhangSlope;
          enters = overhangs ? ENTERS_BY_OVERHANG : ENTERS;
        }
        cross(row * across + column, height, facesUp ? LEAVES : enters);
      }
    }
  }
}

/** Where a side crosses a row, from its vertex with the lower number, so that both of its triangles agree. */
function crossing(
  from: number,
  to: number,
  fromX: number,
  fromY: number,
  toX: number,
  toY: number,
  row: number,
): number {
  return from < to
    ? fromX + ((row - fromY) * (toX - fromX)) / (toY - fromY)
    : toX + ((row - toY) * (fromX - toX)) / (fromY - toY);
}

/** z of the unit normal of a triangle; 0 where it has no area. */
export function normalSlope(part: OrientedMesh, a: number, b: number, c: number): number {
  const { x, y, z } = part;
  const ux = x[b] - x[a];
  const uy = y[b] - y[a];
  const uz = z[b] - z[a];
  const vx = x[c] - x[a];
  const vy = y[c] - y[a];
  const vz = z[c] - z[a];
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz);
  return length > 0 ? nz / length : 0;
}
