import type { Lab, PartType } from '@buildweek/model';
import { BuildPacker, BuildTimer } from '@buildweek/timing';

/** Typical hours of a build of pieces of one part type: with a single piece, and for each further one. */
export interface TypicalPrint {
  readonly first: number;
  readonly further: number;
  /** The same for the cool-down that grows with the height of the build. */
  readonly coolDown: number;
}

/**
 * What the print of a part type typically takes. For shapes the hours of a further piece are those of a full
 * machine, spread over its pieces: a mask prints them for nothing, and a powder cake gets higher.
 */
export function typicalPrintOf(part: PartType, lab: Lab): TypicalPrint {
  const { print } = part;
  if (print === null) return { first: 0, further: 0, coolDown: 0 };
  if (print.kind === 'typed') {
    const further = print.perPart.typicalHours;
    return { first: print.perBuild.typicalHours + further, further, coolDown: 0 };
  }
  const build = part.stages.find((stage) => stage.kind === 'build');
  const shaped = lab.machines.find((machine) => machine.name === build?.machineGroup)?.shaped ?? null;
  if (shaped === null) {
    throw new Error(
      `"${part.name}" has a shape, but no machine of its route packs and times builds by shapes.`,
    );
  }
  const packer = new BuildPacker(shaped.space, [print.shape]);
  const timer = new BuildTimer(shaped.time, [print.shape]);
  const hours = (pieces: number): number => {
    const counts = Int32Array.of(pieces);
    return timer.printHours(counts, packer.height(counts));
  };
  const most = packer.most(0);
  const first = hours(1);
  return {
    first,
    further: most > 1 ? (hours(most) - first) / (most - 1) : 0,
    coolDown: shaped.coolDownHoursPerMillimetre * packer.height(Int32Array.of(1)),
  };
}
