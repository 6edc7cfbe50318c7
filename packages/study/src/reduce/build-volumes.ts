import type { History, UnitHistory } from '@buildweek/core';
import type { ShapedBuilds } from '@buildweek/model';

/** Sums over the builds of a machine group that ended in the measured window. */
export interface BuildVolumes {
  readonly builds: number;
  readonly pieces: number;
  readonly fillSum: number;
  /** Of the parts, mm. */
  readonly heightSum: number;
  /** What the builds took of the space, the bedding of a part cake with it, mm3. */
  readonly cakeVolume: number;
  /** mm3; never more than the cake. */
  readonly partVolume: number;
}

export function buildVolumes(history: History, group: string, shaped: ShapedBuilds): BuildVolumes {
  const { space, time } = shaped;
  const units = history.machines.filter((unit) => unit.group === group);
  const sum = (figure: (unit: UnitHistory) => number): number =>
    units.reduce((total, unit) => total + figure(unit), 0);
  const builds = sum((unit) => unit.runs);
  const heightSum = sum((unit) => unit.heightSum);
  const bedding = time.kind === 'powder bed' ? time.bedding : 0;
  const cakeVolume = space.width * space.depth * (heightSum + builds * bedding);
  return {
    builds,
    pieces: sum((unit) => unit.pieces),
    fillSum: sum((unit) => unit.fillSum),
    heightSum,
    cakeVolume,
    // Parts as large as the bed may seem larger: lengths that differ by half a micrometre are the same to the packer.
    partVolume: Math.min(
      cakeVolume,
      sum((unit) => unit.partVolumeSum),
    ),
  };
}
