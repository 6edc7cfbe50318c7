import { meanOf } from '@buildweek/core';
import type { MachineGroup, PartType } from '@buildweek/model';
import { BuildPacker, BuildTimer } from '@buildweek/timing';

/** Expected hours of a print, and by how many the height of the build makes its cool-down longer. */
export interface ExpectedPrint {
  readonly hours: number;
  readonly furtherCoolDown: number;
}

/**
 * What a build of so many pieces of one part type takes on a machine; a broken number of pieces lies between the
 * two whole ones. Nothing for a part without a build.
 */
export function expectedPrint(part: PartType, group: MachineGroup, pieces: number): ExpectedPrint {
  const { print } = part;
  if (print === null) return { hours: 0, furtherCoolDown: 0 };
  if (print.kind === 'typed') {
    const hours = meanOf(print.perBuild.distribution) + pieces * meanOf(print.perPart.distribution);
    return { hours, furtherCoolDown: 0 };
  }
  const { shaped } = group;
  if (shaped === null) throw new Error(`"${group.name}" does not say how builds are packed and timed.`);
  const packer = new BuildPacker(shaped.space, [print.shape]);
  const timer = new BuildTimer(shaped.time, [print.shape]);
  const below = Math.max(1, Math.floor(pieces));
  const share = Math.max(0, pieces - below);
  const between = (measure: (counts: Int32Array) => number): number => {
    const low = measure(Int32Array.of(below));
    return share === 0 ? low : low + share * (measure(Int32Array.of(below + 1)) - low);
  };
  return {
    hours: meanOf(shaped.timeFactor) * between((counts) => timer.printHours(counts, packer.height(counts))),
    furtherCoolDown: shaped.coolDownHoursPerMillimetre * between((counts) => packer.height(counts)),
  };
}
