import type { OrientedMesh } from './oriented-mesh.ts';

/** Places and weights of the Gauss rule with two points, exact up to the third power, on an interval of length 1. */
const GAUSS = [0.5 - Math.sqrt(3) / 6, 0.5 + Math.sqrt(3) / 6] as const;

/**
 * Mean areas of the cuts through equally thick slabs, from the bottom to the top, mm2: exact for a closed mesh, and
 * together times the thickness the volume. A plane that cuts a triangle gives one side of the outline, and the area
 * of a cut is the sum of cross products along it (shoelace formula); voids run the other way round and are
 * subtracted. Between the heights of its corners the share of a triangle is a square in the height, which the Gauss
 * rule integrates exactly.
 */
export function layerAreas(part: OrientedMesh, slabs: number): Float64Array {
  const { z, triangles } = part;
  const sums = new Float64Array(slabs);
  const perSlab = slabs / part.height;
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const a = triangles[corner];
    const b = triangles[corner + 1];
    const c = triangles[corner + 2];
    const low = Math.min(z[a], z[b], z[c]);
    const high = Math.max(z[a], z[b], z[c]);
    const middle = z[a] + z[b] + z[c] - low - high;
    const last = Math.min(slabs - 1, Math.floor(high * perSlab));
    for (let slab = Math.min(last, Math.floor(low * perSlab)); slab <= last; slab++) {
      const from = Math.max(low, slab / perSlab);
      // The last slab takes what rounding leaves above it.
      const to = slab === last ? high : (slab + 1) / perSlab;
      const between = Math.min(to, Math.max(from, middle));
      sums[slab] += outlineShare(part, a, b, c, from, between) + outlineShare(part, a, b, c, between, to);
    }
  }
  return sums.map((sum) => sum * perSlab);
}

/** Integral over the height of the cross product along the side that planes cut out of a triangle, halved. */
function outlineShare(part: OrientedMesh, a: number, b: number, c: number, from: number, to: number): number {
  if (!(to > from)) return 0;
  const { x, y, z } = part;
  // The middle keeps numbers small; for closed outlines any point gives the same area.
  const middleX = part.width / 2;
  const middleY = part.depth / 2;
  let sum = 0;
  for (const place of GAUSS) {
    const height = from + place * (to - from);
    let upX = 0;
    let upY = 0;
    let downX = 0;
    let downY = 0;
    for (let side = 0; side < 3; side++) {
      const start = side === 0 ? a : side === 1 ? b : c;
      const end = side === 0 ? b : side === 1 ? c : a;
      const isStartBelow = z[start] <= height;
      if (isStartBelow === z[end] <= height) continue;
      const share = (height - z[start]) / (z[end] - z[start]);
      const cutX = x[start] + share * (x[end] - x[start]) - middleX;
      const cutY = y[start] + share * (y[end] - y[start]) - middleY;
      if (isStartBelow) {
        upX = cutX;
        upY = cutY;
      } else {
        downX = cutX;
        downY = cutY;
      }
    }
    sum += downX * upY - downY * upX;
  }
  return (sum * (to - from)) / 4;
}
