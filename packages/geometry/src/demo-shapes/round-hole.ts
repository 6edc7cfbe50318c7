/** A square of grid cells that becomes a round hole or boss. Lengths are mm. */
export interface RoundHole {
  readonly u: number;
  readonly v: number;
  /** Squares up to this half side become circles of this radius. */
  readonly radius: number;
  /** From this half side on, the grid stays as it is. */
  readonly outside: number;
}

/** Two further lines on each half side, where the corners of a regular sixteen-sided outline lie. */
const EIGHTH = Math.tan(Math.PI / 8);

/** Lines that a grid needs along one direction for a hole around the given middle. */
export function holeLines(middle: number, radius: number, outside: number): number[] {
  const offsets = [0, radius * EIGHTH, radius, outside];
  return offsets.flatMap((offset) => [middle - offset, middle + offset]);
}

/** Whether a cell, named by its lower ends, lies in the hole. */
export function isInHole({ u, v, radius }: RoundHole, cellU: number, cellV: number): boolean {
  const slack = 1e-9;
  return (
    cellU >= u - radius - slack &&
    cellU < u + radius - slack &&
    cellV >= v - radius - slack &&
    cellV < v + radius - slack
  );
}

/** Moves a crossing of lines so that squares around the middle of a hole become circles. */
export function roundedAt(hole: RoundHole, u: number, v: number): [number, number] {
  const alongU = u - hole.u;
  const alongV = v - hole.v;
  const halfSide = Math.max(Math.abs(alongU), Math.abs(alongV));
  if (halfSide === 0 || halfSide > hole.radius + 1e-9) return [u, v];
  const factor = halfSide / Math.hypot(alongU, alongV);
  return [hole.u + alongU * factor, hole.v + alongV * factor];
}
