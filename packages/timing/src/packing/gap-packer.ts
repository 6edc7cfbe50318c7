/** How the rectangle for a gap is chosen among those that fit into it; one that fills it from wall to wall goes first. */
export interface GapRule {
  /** What is largest: the side that lies in the gap, the area, the side that stands up, or the sum of the sides. */
  readonly by: 'width' | 'area' | 'height' | 'sides';
  /** Whether it goes to the higher wall of the gap, or always to the left. */
  readonly toHigherWall: boolean;
}

/**
 * Packs rectangles into one, from the bottom up: the lowest gap in the skyline is found again and again, and the
 * rectangle that suits it best is put in; a gap that nothing fits is raised to its lower wall. It ends early when
 * more is wasted than is left over.
 * Source: E. K. Burke, G. Kendall and G. Whitwell, A new placement heuristic for the orthogonal stock-cutting
 * problem, Operations Research 52 (2004), pages 655-671, from memory.
 * All lengths are whole numbers of the same unit. Nothing is allocated unless there are more pieces than ever before.
 */
export class GapPacker {
  private readonly long: Float64Array;
  private readonly short: Float64Array;
  private readonly remaining: Int32Array;
  /** Shapes of which there are pieces, and how many such shapes. */
  private readonly present: Int32Array;
  private kinds = 0;
  /** Segments of the skyline from left to right: where each begins, and how high it is. */
  private lefts = new Float64Array(64);
  private heights = new Float64Array(64);
  private segments = 0;
  /** Where the pieces of the last packing stand, one after another: left, bottom, width, height. */
  placements = new Float64Array(256);
  /** How many of them stand. */
  placed = 0;

  /** @param long the longer side of each shape, and `short` the other */
  constructor(long: Float64Array, short: Float64Array) {
    this.long = long;
    this.short = short;
    this.remaining = new Int32Array(long.length);
    this.present = new Int32Array(long.length);
  }

  /** Whether the rule finds a place for all pieces in a rectangle of this width and height. */
  packs(counts: Int32Array, width: number, height: number, rule: GapRule): boolean {
    const { long, short, remaining } = this;
    let left = 0;
    let waste = width * height;
    this.kinds = 0;
    for (let shape = 0; shape < counts.length; shape++) {
      if (counts[shape] === 0) continue;
      this.present[this.kinds++] = shape;
      remaining[shape] = counts[shape];
      left += counts[shape];
      waste -= counts[shape] * long[shape] * short[shape];
    }
    this.makeRoom(left);
    this.placed = 0;
    this.segments = 1;
    this.lefts[0] = 0;
    this.lefts[1] = width;
    this.heights[0] = 0;
    while (left > 0) {
      const gap = this.lowest();
      const bottom = this.heights[gap];
      const gapWidth = this.lefts[gap + 1] - this.lefts[gap];
      const choice = this.choose(gapWidth, height - bottom, rule);
      if (choice >= 0) {
        this.place(gap, choice >> 1, (choice & 1) === 1, height, rule.toHigherWall);
        left--;
      } else {
        if (this.segments === 1) return false;
        const before = gap > 0 ? this.heights[gap - 1] : height;
        const after = gap + 1 < this.segments ? this.heights[gap + 1] : height;
        const wall = Math.min(before, after);
        waste -= gapWidth * (wall - bottom);
        if (waste < 0) return false;
        this.heights[gap] = wall;
        this.mergeAround(gap);
      }
    }
    return true;
  }

  private makeRoom(pieces: number): void {
    if (this.lefts.length < pieces + 2) {
      this.lefts = new Float64Array(2 * pieces + 2);
      this.heights = new Float64Array(2 * pieces + 2);
    }
    if (this.placements.length < 4 * pieces) this.placements = new Float64Array(8 * pieces);
  }

  private lowest(): number {
    let gap = 0;
    for (let segment = 1; segment < this.segments; segment++) {
      if (this.heights[segment] < this.heights[gap]) gap = segment;
    }
    return gap;
  }

  /**
   * The shape that suits the gap best, whatever the order of the shapes: times 2, plus 1 when its long side stands up;
   * -1 when none fits.
   */
  private choose(width: number, height: number, rule: GapRule): number {
    const { long, short, remaining } = this;
    let choice = -1;
    let best = 0;
    let bestWidth = 0;
    let bestHeight = 0;
    for (let index = 0; index < this.kinds; index++) {
      const shape = this.present[index];
      if (remaining[shape] === 0 || short[shape] > width || short[shape] > height) continue;
      for (let turn = 0; turn < 2; turn++) {
        const across = turn === 0 ? long[shape] : short[shape];
        const up = turn === 0 ? short[shape] : long[shape];
        if (across > width || up > height) continue;
        let value = suitability(across, up, rule.by);
        if (across === width) value += FILLS;
        const isBetter =
          value > best ||
          (value === best && (across > bestWidth || (across === bestWidth && up > bestHeight)));
        if (isBetter) {
          best = value;
          bestWidth = across;
          bestHeight = up;
          choice = 2 * shape + turn;
        }
      }
    }
    return choice;
  }

  private place(gap: number, shape: number, stands: boolean, height: number, toHigherWall: boolean): void {
    const across = stands ? this.short[shape] : this.long[shape];
    const up = stands ? this.long[shape] : this.short[shape];
    const { lefts, heights } = this;
    const bottom = heights[gap];
    const start = lefts[gap];
    const end = lefts[gap + 1];
    const before = gap > 0 ? heights[gap - 1] : height;
    const after = gap + 1 < this.segments ? heights[gap + 1] : height;
    const isLeft = !toHigherWall || before >= after;
    this.remaining[shape]--;
    const base = 4 * this.placed++;
    this.placements[base] = isLeft ? start : end - across;
    this.placements[base + 1] = bottom;
    this.placements[base + 2] = across;
    this.placements[base + 3] = up;
    if (across === end - start) {
      heights[gap] = bottom + up;
      this.mergeAround(gap);
      return;
    }
    this.split(gap);
    if (isLeft) {
      lefts[gap + 1] = start + across;
      heights[gap] = bottom + up;
      this.mergeAround(gap);
    } else {
      lefts[gap + 1] = end - across;
      heights[gap + 1] = bottom + up;
      this.mergeAround(gap + 1);
    }
  }

  /** Joins a segment with neighbours of the same height. */
  private mergeAround(segment: number): void {
    const { heights } = this;
    if (segment + 1 < this.segments && heights[segment + 1] === heights[segment]) this.drop(segment + 1);
    if (segment > 0 && heights[segment - 1] === heights[segment]) this.drop(segment);
  }

  // Loops and not copyWithin: for so few segments a call costs more than the copying.

  /** Makes two segments of one, both as high as it was; where the second begins is for the caller to say. */
  private split(segment: number): void {
    const { lefts, heights } = this;
    for (let index = this.segments; index > segment; index--) {
      lefts[index + 1] = lefts[index];
      heights[index] = heights[index - 1];
    }
    this.segments++;
  }

  /** The segment becomes part of the one before it. */
  private drop(segment: number): void {
    const { lefts, heights } = this;
    for (let index = segment; index < this.segments; index++) {
      lefts[index] = lefts[index + 1];
      heights[index] = heights[index + 1];
    }
    this.segments--;
  }
}

/** More than any side, sum of sides or area in square micrometres of a platform. */
const FILLS = 2 ** 50;

function suitability(across: number, up: number, by: GapRule['by']): number {
  switch (by) {
    case 'width':
      return across;
    case 'area':
      return across * up;
    case 'height':
      return up;
    case 'sides':
      return across + up;
  }
}
