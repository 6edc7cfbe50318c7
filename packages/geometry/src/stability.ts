import { convexOutline } from './convex-outline.ts';
import type { Mesh } from './mesh.ts';
import type { OrientedMesh, Rotation } from './oriented-mesh.ts';
import type { Solid } from './solid.ts';

/** A part stands firmly that may lean so far, as a slope (about nine degrees). Common practice, no source. */
const FIRM_SLOPE = 0.15;

/**
 * Whether the centre of gravity stays above the outline of what lies on the platform when the part leans a little, to
 * whichever side.
 */
export function standsFirmly(mesh: Mesh, rotation: Rotation, part: OrientedMesh, solid: Solid): boolean {
  const { x, y, z, triangles, restHeight } = part;
  const restingX: number[] = [];
  const restingY: number[] = [];
  for (let vertex = 0; vertex < z.length; vertex++) {
    // Vertices that no triangle uses may lie below the platform.
    if (z[vertex] > restHeight || z[vertex] < 0) continue;
    restingX.push(x[vertex]);
    restingY.push(y[vertex]);
  }
  const outline = convexOutline(restingX, restingY);
  if (outline.length < 3) return false;
  // The shift of the turned part follows from any one vertex.
  const vertex = triangles[0];
  const placed = (row: number, coordinate: number): number => {
    let centre = coordinate;
    for (let axis = 0; axis < 3; axis++) {
      centre += rotation[3 * row + axis] * (solid.centroid[axis] - mesh.positions[3 * vertex + axis]);
    }
    return centre;
  };
  const centreX = placed(0, x[vertex]);
  const centreY = placed(1, y[vertex]);
  const margin = FIRM_SLOPE * placed(2, z[vertex]);
  return outline.every(([fromX, fromY], index) => {
    const [toX, toY] = outline[(index + 1) % outline.length];
    const length = Math.hypot(toX - fromX, toY - fromY);
    const inside = ((toX - fromX) * (centreY - fromY) - (toY - fromY) * (centreX - fromX)) / length;
    return inside >= margin;
  });
}
