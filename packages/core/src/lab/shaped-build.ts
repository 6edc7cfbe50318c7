import type { ShapedBuilds } from '@buildweek/model';
import { BuildPacker, BuildTimer } from '@buildweek/timing';
import { toMilliseconds } from '../kernel/clock.ts';
import { createSampler, type Sampler } from '../kernel/sampler.ts';
import type { CompiledShapes } from './compiled-lab.ts';
import type { Load, Lot } from './load.ts';

/**
 * What fits into a build of one class, and how long it prints: for machines whose builds follow from the shapes
 * of the parts. Pieces are counted into it one lot after another; the answers are those for what is counted.
 */
export class ShapedBuild {
  private readonly builds: ShapedBuilds;
  private readonly packer: BuildPacker;
  private readonly timer: BuildTimer;
  /** Position among the shapes for each part type of the lab; -1 for parts of other classes. */
  private readonly shapeOfPart: Int32Array;
  private readonly volumes: Float64Array;
  private readonly counts: Int32Array;
  readonly timeFactor: Sampler;

  constructor({ builds, shapes, shapeOfPart }: CompiledShapes) {
    this.builds = builds;
    this.packer = new BuildPacker(builds.space, shapes);
    this.timer = new BuildTimer(builds.time, shapes);
    this.shapeOfPart = shapeOfPart;
    this.volumes = Float64Array.from(shapes, (shape) => shape.volume);
    this.counts = new Int32Array(shapes.length);
    this.timeFactor = createSampler(builds.timeFactor);
  }

  /** Most pieces of a part type that an empty machine holds. */
  mostPieces(part: number): number {
    return this.packer.most(this.shapeOfPart[part]);
  }

  /** Begins to count a build. */
  clear(): void {
    this.counts.fill(0);
  }

  /** Counts pieces of a lot in, when they fit with what is counted. */
  takes(lot: Lot, pieces: number): boolean {
    const shape = this.shapeOfPart[lot.part.index];
    this.counts[shape] += pieces;
    if (this.packer.fits(this.counts)) return true;
    this.counts[shape] -= pieces;
    return false;
  }

  /** Counts what is in a load; of a job that is too large for a machine as much as one holds. */
  countLoad(load: Load): void {
    this.clear();
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
      const pieces = load.isBuild ? lot.pieces : Math.min(lot.pieces, this.mostPieces(lot.part.index));
      this.counts[this.shapeOfPart[lot.part.index]] += pieces;
    }
  }

  /** Height of the build, mm. */
  get height(): number {
    return this.packer.height(this.counts);
  }

  /** Share of the platform, or of the height of the powder bed, that is taken. */
  get fill(): number {
    return this.packer.fill(this.counts);
  }

  /** Volume of the parts, mm3. */
  get partVolume(): number {
    let sum = 0;
    for (let shape = 0; shape < this.counts.length; shape++) sum += this.counts[shape] * this.volumes[shape];
    return sum;
  }

  /** Hours that the print is estimated to take. */
  get printHours(): number {
    return this.timer.printHours(this.counts, this.height);
  }

  /** Milliseconds by which the cool-down is longer for the height of the build. */
  get furtherCoolDown(): number {
    return toMilliseconds(this.builds.coolDownHoursPerMillimetre * this.height);
  }
}
