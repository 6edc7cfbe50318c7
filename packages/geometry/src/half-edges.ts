/**
 * The sides of all triangles, grouped by the edge they lie on. Side 3 t + k runs from corner k of triangle t to the
 * next corner.
 */
export interface HalfEdges {
  /** Sides, those of one edge next to each other. */
  readonly sides: Uint32Array;
  /** For each of `sides` twice the higher vertex number, plus one where the side runs from higher to lower. */
  readonly keys: Uint32Array;
  /** Where the sides whose lower vertex is v begin; one more entry than vertices. */
  readonly starts: Uint32Array;
}

/** Buckets up to this length are sorted by insertion; longer ones (the tip of a cone) by the built-in sort. */
const SHORT = 24;

/** Groups the sides of triangles by edge: counting sort by the lower vertex, then by the higher one. */
export function halfEdges(triangles: Uint32Array, vertexCount: number): HalfEdges {
  const sideCount = triangles.length;
  const starts = new Uint32Array(vertexCount + 1);
  for (let side = 0; side < sideCount; side++) {
    const from = triangles[side];
    const to = triangles[nextSide(side)];
    starts[Math.min(from, to) + 1]++;
  }
  for (let vertex = 0; vertex < vertexCount; vertex++) starts[vertex + 1] += starts[vertex];
  const free = starts.slice(0, vertexCount);
  const sides = new Uint32Array(sideCount);
  const keys = new Uint32Array(sideCount);
  for (let side = 0; side < sideCount; side++) {
    const from = triangles[side];
    const to = triangles[nextSide(side)];
    const place = from < to ? free[from]++ : free[to]++;
    sides[place] = side;
    keys[place] = from < to ? 2 * to : 2 * from + 1;
  }
  for (let vertex = 0; vertex < vertexCount; vertex++) {
    sortBucket(sides, keys, starts[vertex], starts[vertex + 1]);
  }
  return { sides, keys, starts };
}

/** The side that begins where this one ends. */
export function nextSide(side: number): number {
  return side % 3 === 2 ? side - 2 : side + 1;
}

function sortBucket(sides: Uint32Array, keys: Uint32Array, start: number, end: number): void {
  if (end - start > SHORT) {
    const order = Array.from({ length: end - start }, (_, index) => start + index);
    order.sort((one, other) => keys[one] - keys[other] || sides[one] - sides[other]);
    const sortedSides = order.map((index) => sides[index]);
    const sortedKeys = order.map((index) => keys[index]);
    sides.set(sortedSides, start);
    keys.set(sortedKeys, start);
    return;
  }
  for (let next = start + 1; next < end; next++) {
    const key = keys[next];
    const side = sides[next];
    let place = next - 1;
    for (; place >= start && keys[place] > key; place--) {
      keys[place + 1] = keys[place];
      sides[place + 1] = sides[place];
    }
    keys[place + 1] = key;
    sides[place + 1] = side;
  }
}

/**
 * Visits every edge with its sides, `sides[from]` to `sides[to - 1]`, of which the first `forward` run from the lower
 * to the higher vertex.
 */
export function visitEdges(
  edges: HalfEdges,
  visit: (from: number, to: number, forward: number) => void,
): void {
  const { keys } = edges;
  let from = 0;
  // A bucket ends where the lower vertex changes; within it, equal higher vertices stand together.
  for (let vertex = 0; vertex + 1 < edges.starts.length; vertex++) {
    const end = edges.starts[vertex + 1];
    while (from < end) {
      const higher = keys[from] >>> 1;
      let to = from;
      let forward = 0;
      while (to < end && keys[to] >>> 1 === higher) {
        if ((keys[to] & 1) === 0) forward++;
        to++;
      }
      visit(from, to, forward);
      from = to;
    }
  }
}
