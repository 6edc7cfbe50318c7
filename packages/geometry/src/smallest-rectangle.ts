/** Points are reduced to so many strips before the outline is taken. */
const STRIPS = 1024;

/** A rectangle around points in a plane. */
export interface Rectangle {
  /** Direction of one of its sides, radians from the x axis, above -π/4 and up to π/4. */
  readonly angle: number;
  readonly area: number;
}

/**
 * The smallest rectangle around points: one of its sides lies along a side of the convex outline (Freeman and
 * Shapira, Determining the minimum-area encasing rectangle for an arbitrary closed curve, 1975). Of many points only
 * the lowest and highest in each of 1,024 strips count, which moves the outline by at most a strip (Bentley, Faust and
 * Preparata, Approximation algorithms for convex hulls, 1982).
 */
export function smallestRectangle(x: Float64Array, y: Float64Array): Rectangle {
  const outline = convexOutline(reduced(x, y));
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
function rectangleArea(points: readonly Point[], angle: number): number {
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

type Point = readonly [number, number];

function quarterTurned(angle: number): number {
  const quarter = Math.PI / 2;
  return angle - quarter * Math.ceil(angle / quarter - 0.5);
}

function reduced(x: Float64Array, y: Float64Array): Point[] {
  if (x.length <= 2 * STRIPS) return Array.from(x, (value, index) => [value, y[index]] as const);
  let left = 0;
  let right = 0;
  for (let index = 1; index < x.length; index++) {
    if (x[index] < x[left]) left = index;
    if (x[index] > x[right]) right = index;
  }
  const perUnit = STRIPS / (x[right] - x[left]);
  const lowest = new Int32Array(STRIPS).fill(-1);
  const highest = new Int32Array(STRIPS).fill(-1);
  for (let index = 0; index < x.length; index++) {
    const strip = Math.min(STRIPS - 1, Math.floor((x[index] - x[left]) * perUnit));
    if (lowest[strip] < 0 || y[index] < y[lowest[strip]]) lowest[strip] = index;
    if (highest[strip] < 0 || y[index] > y[highest[strip]]) highest[strip] = index;
  }
  return [left, right, ...lowest, ...highest]
    .filter((index) => index >= 0)
    .map((index) => [x[index], y[index]] as const);
}

/** Corners of the convex hull, counter-clockwise (Andrew's monotone chain, 1979). */
function convexOutline(points: Point[]): Point[] {
  const sorted = points.sort((one, other) => one[0] - other[0] || one[1] - other[1]);
  const chain = (ordered: readonly Point[]): Point[] => {
    const result: Point[] = [];
    for (const point of ordered) {
      while (result.length >= 2 && turn(result[result.length - 2], result[result.length - 1], point) <= 0) {
        result.pop();
      }
      result.push(point);
    }
    result.pop();
    return result;
  };
  const outline = [...chain(sorted), ...chain(sorted.slice().reverse())];
  return outline.length > 0 ? outline : sorted.slice(0, 1);
}

function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
