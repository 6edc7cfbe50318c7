import type { BuildSpace, PartShape } from '@buildweek/model';
import { checkPositiveShare } from '../checks.ts';
import { SAME_LENGTH } from '../lengths.ts';
import { checkSpace } from './space.ts';

/** Counts are whole numbers of 32 bits; a build of more pieces than this is none that anybody would unpack. */
const MOST_PIECES = 1_000_000;

type PowderBed = Extract<BuildSpace, { kind: 'powder bed' }>;

/**
 * Parts stacked in powder, by their boxes and volumes. The height is the largest of three: of the highest part; of
 * the boxes with their spacing, when they take the box share of the cake; of the parts, when they are the packing
 * density of the cake, between the margins. The shares are about stacking: a single piece is as high as it is.
 * The two shares are parameters of the space, common practice, no source: a packing density of 0.05 low, 0.1 typical,
 * 0.2 high; a box share of 0.35 low, 0.5 typical, 0.7 high.
 */
export class PowderBedPacker {
  private readonly mostHeight: number;
  private readonly heights: Float64Array;
  /** Height that one piece adds by its box, and by its volume. */
  private readonly boxRises: Float64Array;
  private readonly volumeRises: Float64Array;
  private readonly stands: Uint8Array;
  private readonly mostPieces: Int32Array;

  constructor(space: PowderBed, shapes: readonly PartShape[]) {
    checkSpace(space);
    checkPositiveShare('packing density', space.packingDensity);
    checkPositiveShare('share of boxes in the cake', space.boxShare);
    const width = space.width - 2 * space.margin;
    const depth = space.depth - 2 * space.margin;
    const floor = width * depth;
    const { spacing } = space;
    this.mostHeight = space.height;
    this.heights = Float64Array.from(shapes, (shape) => shape.height);
    this.boxRises = Float64Array.from(
      shapes,
      (shape) =>
        ((shape.width + spacing) * (shape.depth + spacing) * (shape.height + spacing)) /
        (floor * space.boxShare),
    );
    this.volumeRises = Float64Array.from(shapes, (shape) => shape.volume / (floor * space.packingDensity));
    const long = Math.max(width, depth) + SAME_LENGTH;
    const short = Math.min(width, depth) + SAME_LENGTH;
    this.stands = Uint8Array.from(shapes, (shape) =>
      Math.max(shape.width, shape.depth) <= long && Math.min(shape.width, shape.depth) <= short ? 1 : 0,
    );
    this.mostPieces = Int32Array.from(shapes, (_, shape) => this.countMost(shape));
  }

  fits(counts: Int32Array): boolean {
    for (let shape = 0; shape < counts.length; shape++) {
      if (counts[shape] > 0 && this.stands[shape] === 0) return false;
    }
    return this.height(counts) <= this.mostHeight + SAME_LENGTH;
  }

  height(counts: Int32Array): number {
    let highest = 0;
    let byBoxes = 0;
    let byVolume = 0;
    let total = 0;
    for (let shape = 0; shape < counts.length; shape++) {
      const pieces = counts[shape];
      if (pieces === 0) continue;
      total += pieces;
      highest = Math.max(highest, this.heights[shape]);
      byBoxes += pieces * this.boxRises[shape];
      byVolume += pieces * this.volumeRises[shape];
    }
    return total === 1 ? highest : Math.max(highest, byBoxes, byVolume);
  }

  fill(counts: Int32Array): number {
    return this.height(counts) / this.mostHeight;
  }

  most(shape: number): number {
    return this.mostPieces[shape];
  }

  private countMost(shape: number): number {
    const height = this.mostHeight + SAME_LENGTH;
    if (this.stands[shape] === 0 || this.heights[shape] > height) return 0;
    const rise = Math.max(this.boxRises[shape], this.volumeRises[shape]);
    let most = Math.min(MOST_PIECES, Math.floor(height / rise));
    // The quotient may round across a whole number; the products are what `fits` compares.
    while (most > 1 && most * rise > height) most--;
    while (most < MOST_PIECES && (most + 1) * rise <= height) most++;
    return Math.max(1, most);
  }
}
