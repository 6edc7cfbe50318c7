/** x and y. */
export type PlanePoint = readonly [number, number];

/** Points are reduced to so many strips before the outline is taken. */
const STRIPS = 1024;

/**
 * Corners of the convex hull of points, counter-clockwise (Andrew, Another efficient algorithm for convex hulls in two
 * dimensions, 1979). Of many points only the lowest and highest in each of 1,024 strips count, which moves the outline
 * by at most the width of a strip (Bentley, Faust and Preparata, Approximation algorithms for convex hulls, 1982).
 */
export function convexOutline(x: ArrayLike<number>, y: ArrayLike<number>): PlanePoint[] {
  const sorted = reduced(x, y).sort((one, other) => one[0] - other[0] || one[1] - other[1]);
  const chain = (ordered: readonly PlanePoint[]): PlanePoint[] => {
    const result: PlanePoint[] = [];
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

function turn(a: PlanePoint, b: PlanePoint, c: PlanePoint): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

function reduced(x: ArrayLike<number>, y: ArrayLike<number>): PlanePoint[] {
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
