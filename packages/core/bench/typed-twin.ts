import type { Lab, PartType } from '@buildweek/model';
import { BuildPacker, BuildTimer } from '@buildweek/timing';

/**
 * The same lab with numbers typed in instead of shapes: as many pieces fit, and print as long, as in a full machine
 * of each part type. What its builds hold differs a little; what it costs to play without packing is what counts.
 */
export function typedTwin(lab: Lab): Lab {
  return {
    ...lab,
    machines: lab.machines.map((machine) => ({ ...machine, shaped: null })),
    stations: lab.stations.map((station) =>
      station.unit === 'box volume' ? { ...station, unit: 'parts' as const, capacity: 20 } : station,
    ),
    parts: lab.parts.map((part) => typed(part, lab)),
  };
}

function typed(part: PartType, lab: Lab): PartType {
  const build = part.stages.find((stage) => stage.kind === 'build');
  const shaped = lab.machines.find((machine) => machine.name === build?.machineGroup)?.shaped ?? null;
  if (part.print?.kind !== 'shape' || shaped === null) return part;
  const packer = new BuildPacker(shaped.space, [part.print.shape]);
  const timer = new BuildTimer(shaped.time, [part.print.shape]);
  const hoursOf = (pieces: number): number => {
    const counts = Int32Array.of(pieces);
    return timer.printHours(counts, packer.height(counts));
  };
  const most = packer.most(0);
  const one = hoursOf(1);
  const further = most > 1 ? (hoursOf(most) - one) / (most - 1) : 0;
  const constant = (hours: number) => ({
    distribution: { kind: 'constant' as const, value: hours },
    typicalHours: hours,
  });
  return {
    ...part,
    print: { kind: 'typed', perBuild: constant(Math.max(0, one - further)), perPart: constant(further) },
  };
}
