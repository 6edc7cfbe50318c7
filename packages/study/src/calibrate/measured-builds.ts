import type { BuildTimeModel, PartShape } from '@buildweek/model';
import { BuildPacker, BuildTimer, depositedVolume, layerCount, type MeasuredBuild } from '@buildweek/timing';
import type { RecordedBuild } from './recorded-builds.ts';
import type { CalibratedMachines } from './shaped-parts.ts';

/** A recorded build with the measures that its print time follows from. */
export interface BuildToFit {
  readonly recorded: RecordedBuild;
  readonly measured: MeasuredBuild;
  /** Print hours with the parameters that the machine has. */
  readonly hoursNow: number;
  /** Whether the packer gets the pieces into one build. */
  readonly fits: boolean;
}

/** Sums the shapes of what was in every build; its height is that of the packer, as in the simulation. */
export function buildsToFit(
  recorded: readonly RecordedBuild[],
  { builds: { space, time }, parts }: CalibratedMachines,
): BuildToFit[] {
  const shapes = parts.map(({ shape }) => shape);
  const packer = new BuildPacker(space, shapes);
  const timer = new BuildTimer(time, shapes);
  return recorded.map((build) => {
    const counts = Int32Array.from(parts, ({ name }) => build.contents.get(name) ?? 0);
    const height = packer.height(counts);
    return {
      recorded: build,
      measured: { ...sumsOf(counts, shapes, time), height, printHours: build.hours },
      hoursNow: timer.printHours(counts, height),
      fits: packer.fits(counts),
    };
  });
}

function sumsOf(
  counts: Int32Array,
  shapes: readonly PartShape[],
  time: BuildTimeModel,
): Omit<MeasuredBuild, 'height' | 'printHours'> {
  const sum = (measure: (shape: PartShape) => number): number =>
    shapes.reduce((total, shape, index) => total + (counts[index] ?? 0) * measure(shape), 0);
  const common = {
    pieces: sum(() => 1),
    volume: sum(({ volume }) => volume),
    supportedVolume: sum(({ supportedVolume }) => supportedVolume),
  };
  if (time.kind !== 'extrusion') return common;
  return {
    ...common,
    // A thin part is solid, so that what is laid down is no function of the sums over different parts.
    deposited: sum((shape) => depositedVolume(time, shape).total),
    // Each piece takes whole layers; their thickness makes the sum of layers the layers of the sum.
    heights: sum(({ height }) => layerCount(height, time.layer) * time.layer),
  };
}
