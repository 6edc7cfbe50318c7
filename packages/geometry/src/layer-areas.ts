import type { OrientedMesh } from './oriented-mesh.ts';

/**
 * Areas of the cuts through the middles of equally thick slabs, from the bottom to the top, mm2: exact for a closed
 * mesh. Each triangle that a plane cuts gives one side of the outline, and the area is the sum of cross products
 * along it (shoelace formula); voids run the other way round and are subtracted.
 */
export function layerAreas(part: OrientedMesh, slabs: number): Float64Array {
  const { x, y, z, triangles } = part;
  const areas = new Float64Array(slabs);
  const perSlab = slabs / part.height;
  // The middle keeps numbers small; for closed outlines any point gives the same area.
  const middleX = part.width / 2;
  const middleY = part.depth / 2;
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const a = triangles[corner];
    const b = triangles[corner + 1];
    const c = triangles[corner + 2];
    // Slab middles have whole numbers as coordinates.
    const za = z[a] * perSlab - 0.5;
    const zb = z[b] * perSlab - 0.5;
    const zc = z[c] * perSlab - 0.5;
    const end = Math.max(za, zb, zc);
    for (let slab = Math.ceil(Math.min(za, zb, zc)); slab < end; slab++) {
      let upX = 0;
      let upY = 0;
      let downX = 0;
      let downY = 0;
      for (let side = 0; side < 3; side++) {
        const from = side === 0 ? a : side === 1 ? b : c;
        const to = side === 0 ? b : side === 1 ? c : a;
        const fromZ = side === 0 ? za : side === 1 ? zb : zc;
        const toZ = side === 0 ? zb : side === 1 ? zc : za;
        if (fromZ <= slab === toZ <= slab) continue;
        const share = (slab - fromZ) / (toZ - fromZ);
        const cutX = x[from] + share * (x[to] - x[from]) - middleX;
        const cutY = y[from] + share * (y[to] - y[from]) - middleY;
        if (fromZ <= slab) {
          upX = cutX;
          upY = cutY;
        } else {
          downX = cutX;
          downY = cutY;
        }
      }
      areas[slab] += (downX * upY - downY * upX) / 2;
    }
  }
  return areas;
}
