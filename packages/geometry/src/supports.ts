import { type Columns, ENTERS_BY_OVERHANG, LEAVES, normalSlope } from './columns.ts';
import type { OrientedMesh } from './oriented-mesh.ts';

/** Downward faces of a part, exact sums over triangles, mm2. */
export interface DownwardFaces {
  /** Faces that lie on the platform. */
  readonly restingArea: number;
  /** Faces that need support. */
  readonly overhangArea: number;
  /** The same, seen from above. */
  readonly projectedOverhang: number;
}

/**
 * Sums up faces that look down: those on the platform, and overhangs, whose unit normal has a z below the slope.
 */
export function downwardFaces(part: OrientedMesh, overhangSlope: number): DownwardFaces {
  const { x, y, z, triangles, restHeight } = part;
  let restingArea = 0;
  let overhangArea = 0;
  let projectedOverhang = 0;
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const a = triangles[corner];
    const b = triangles[corner + 1];
    const c = triangles[corner + 2];
    const projected = ((x[b] - x[a]) * (y[c] - y[a]) - (y[b] - y[a]) * (x[c] - x[a])) / 2;
    if (projected >= 0) continue;
    if (z[a] <= restHeight && z[b] <= restHeight && z[c] <= restHeight) {
      restingArea -= projected;
      continue;
    }
    const slope = normalSlope(part, a, b, c);
    if (slope >= overhangSlope) continue;
    overhangArea += projected / slope;
    projectedOverhang -= projected;
  }
  return { restingArea, overhangArea, projectedOverhang };
}

/** What the columns tell of a part. Areas are mm2, volumes mm3. */
export interface ColumnMeasures {
  readonly footprint: number;
  /** Volume between overhangs and the platform or the part below them. */
  readonly supportedVolume: number;
  /** Area of the part that supports stand on, seen from above. */
  readonly standingArea: number;
  /** Volume that lies in more than one shell, once for every shell too many. */
  readonly overlapVolume: number;
  /** The same as areas of the cuts through the middles of slabs. */
  readonly overlapAreas: Float64Array;
}

/** Walks up every column: where it is in the part, where supports would stand, where shells overlap. */
export function columnMeasures(part: OrientedMesh, columns: Columns, slabs: number): ColumnMeasures {
  const { starts, heights, kinds, cellArea } = columns;
  const overlapAreas = new Float64Array(slabs);
  const perSlab = slabs / part.height;
  let covered = 0;
  let supportedLength = 0;
  let standing = 0;
  let overlapLength = 0;
  for (let column = 0; column < columns.count; column++) {
    if (starts[column] === starts[column + 1]) continue;
    covered++;
    let depth = 0;
    let floor = 0;
    let onPart = false;
    for (let at = starts[column]; at < starts[column + 1]; at++) {
      const height = heights[at];
      if (depth > 1) {
        const from = heights[at - 1];
        overlapLength += (depth - 1) * (height - from);
        for (let slab = Math.ceil(from * perSlab - 0.5); slab < height * perSlab - 0.5; slab++) {
          overlapAreas[slab] += (depth - 1) * cellArea;
        }
      }
      if (kinds[at] === LEAVES) {
        // Where a column grazes a fold it leaves first, and is minus one deep for a moment.
        depth--;
        if (depth === 0) {
          floor = height;
          onPart = true;
        }
        continue;
      }
      if (depth === 0 && kinds[at] === ENTERS_BY_OVERHANG && height - floor > part.restHeight) {
        supportedLength += height - floor;
        if (onPart) standing++;
      }
      depth++;
    }
  }
  return {
    footprint: covered * cellArea,
    supportedVolume: supportedLength * cellArea,
    standingArea: standing * cellArea,
    overlapVolume: overlapLength * cellArea,
    overlapAreas,
  };
}
