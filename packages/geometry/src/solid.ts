import type { Mesh } from './mesh.ts';

/** Measures of a closed mesh that do not depend on how it stands. */
export interface Solid {
  /** mm3; negative when the triangles face inwards. Shells inside of others, turned the other way, are voids. */
  readonly volume: number;
  /** Area of all triangles, mm2. */
  readonly surface: number;
  /** Centre of gravity at even density, mm; a corner of the mesh where the volume is zero. */
  readonly centroid: readonly [number, number, number];
}

/**
 * Volume and centroid as sums over the tetrahedra between every triangle and one point (divergence theorem; Zhang and
 * Chen, Efficient feature extraction for 2D/3D objects in mesh representation, 2001; Mirtich, Fast and accurate
 * computation of polyhedral mass properties, 1996). The point is a corner of the mesh, so that a part far from the
 * origin loses no digits.
 */
export function solidOf(mesh: Mesh): Solid {
  const { positions, triangles } = mesh;
  const origin = triangles.length > 0 ? 3 * triangles[0] : 0;
  const ox = positions[origin] ?? 0;
  const oy = positions[origin + 1] ?? 0;
  const oz = positions[origin + 2] ?? 0;
  let sixfold = 0;
  let twice = 0;
  let momentX = 0;
  let momentY = 0;
  let momentZ = 0;
  for (let corner = 0; corner < triangles.length; corner += 3) {
    const a = 3 * triangles[corner];
    const b = 3 * triangles[corner + 1];
    const c = 3 * triangles[corner + 2];
    const ax = positions[a] - ox;
    const ay = positions[a + 1] - oy;
    const az = positions[a + 2] - oz;
    const bx = positions[b] - ox;
    const by = positions[b + 1] - oy;
    const bz = positions[b + 2] - oz;
    const cx = positions[c] - ox;
    const cy = positions[c + 1] - oy;
    const cz = positions[c + 2] - oz;
    const nx = (by - ay) * (cz - az) - (bz - az) * (cy - ay);
    const ny = (bz - az) * (cx - ax) - (bx - ax) * (cz - az);
    const nz = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    const part = ax * nx + ay * ny + az * nz;
    twice += Math.sqrt(nx * nx + ny * ny + nz * nz);
    sixfold += part;
    momentX += part * (ax + bx + cx);
    momentY += part * (ay + by + cy);
    momentZ += part * (az + bz + cz);
  }
  const divisor = 4 * sixfold;
  const centroid: [number, number, number] =
    sixfold === 0 ? [ox, oy, oz] : [ox + momentX / divisor, oy + momentY / divisor, oz + momentZ / divisor];
  return { volume: sixfold / 6, surface: twice / 2, centroid };
}
