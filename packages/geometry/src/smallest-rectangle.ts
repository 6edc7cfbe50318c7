import { convexOutline, type PlanePoint } from './convex-outline.ts';

/** A rectangle around points in a plane. */
export interface Rectangle {
  /** Direction of one of its sides, radians from the x axis, above -π/4 and up to π/4. */
  readonly angle: number;
  readonly area: number;
}

/**
 * The smallest rectangle around points: one of its sides lies along a side of the convex outline (Freeman and
 * Shapira, Determining the minimum-area encasing rectangle for an arbitrary closed curve, 1975).
 */
export function smallestRectangle(x: Float64Array, y: Float64Array): Rectangle {
  const outline = convexOutline(x, y);
  let best: Rectangle = { angle: 0, area: rectangleArea(outline, 0) };
  for (let index = 0; index < outline.length; index++) {
    const [fromX, fromY] = outline[index];
    const [toX, toY] = outline[(index + 1) % outline.length];
    const angle = quarterTurned(Math.atan2(toY - fromY, toX - fromX));
    const area = rectangleArea(outline, angle);
    if (area < best.area) best = { angle, area };
  }
  return best;
}

/** Area of the rectangle around the points with a side in the direction of the angle. */
function rectangleArea(points: readonly PlanePoint[], angle: number): number {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  let lowU = Number.POSITIVE_INFINITY;
  let lowV = lowU;
  let highU = Number.NEGATIVE_INFINITY;
  let highV = highU;
  for (const [x, y] of points) {
    const u = x * cosine + y * sine;
    const v = y * cosine - x * sine;
    lowU = Math.min(lowU, u);
    highU = Math.max(highU, u);
    lowV = Math.min(lowV, v);
    highV = Math.max(highV, v);
  }
  return (highU - lowU) * (highV - lowV);
}

function quarterTurned(angle: number): number {
  const quarter = Math.PI / 2;
  return angle - quarter * Math.ceil(angle / quarter - 0.5);
}
