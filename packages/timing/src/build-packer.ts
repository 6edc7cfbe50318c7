import type { BuildSpace, PartShape } from '@buildweek/model';
import { checkPositive } from './checks.ts';
import { PlatformPacker } from './packing/platform-packer.ts';
import { PowderBedPacker } from './packing/powder-bed-packer.ts';

/**
 * What fits into one build, and how high and how full it gets. Every answer follows from the counts alone: the
 * order of calls, and what was asked before, change nothing. Nothing is allocated for an answer.
 */
export class BuildPacker {
  private readonly packer: PlatformPacker | PowderBedPacker;
  private readonly shapeCount: number;

  /**
   * @param space where the parts are put
   * @param shapes what may be in a build; counts are in their order
   * @throws RangeError when a size is not above 0, or the margins and the spacing leave nothing of the space
   */
  constructor(space: BuildSpace, shapes: readonly PartShape[]) {
    for (const shape of shapes) {
      checkPositive('width of a part', shape.width);
      checkPositive('depth of a part', shape.depth);
      checkPositive('height of a part', shape.height);
      checkPositive('volume of a part', shape.volume);
    }
    this.shapeCount = shapes.length;
    this.packer =
      space.kind === 'platform' ? new PlatformPacker(space, shapes) : new PowderBedPacker(space, shapes);
  }

  /**
   * Whether so many pieces of each shape go into one build. On a platform a yes is always right; a no may be wrong,
   * since packing rectangles is too hard to be solved every time. Pieces of a single shape fit up to `most`, and so do
   * those of several shapes with the same sides in plan.
   */
  fits(counts: Int32Array): boolean {
    return this.packer.fits(counts);
  }

  /** Height of the build, mm: of the highest part, or of the parts stacked in the powder without any bedding. */
  height(counts: Int32Array): number {
    return this.packer.height(counts);
  }

  /**
   * Share of the space that is taken, 0 to 1 for what fits. Platform: share of the usable area that the boxes take
   * with their spacing. Powder bed: height of the build over the height of the space.
   */
  fill(counts: Int32Array): number {
    return this.packer.fill(counts);
  }

  /**
   * Most pieces of one shape that an empty build holds; 0 when not even one goes in.
   * @throws RangeError when there is no such shape
   */
  most(shape: number): number {
    if (!(shape >= 0 && shape < this.shapeCount)) throw new RangeError(`There is no shape ${shape}.`);
    return this.packer.most(shape);
  }
}
