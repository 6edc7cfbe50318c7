import type { Lab, MachineGroup, PartType } from '@buildweek/model';
import { scaleDistribution, scaleDuration, scaleWork } from './scale-distribution.ts';

/**
 * Prints take so many times as long, the watched first layers in them too: typed times, and estimates from shapes.
 * Warm-up and cool-down stay.
 *
 * @param of name of a machine group; null: all
 * @param factor above 0
 */
export function scalePrintTimes(lab: Lab, of: string | null, factor: number): Lab {
  const isMeant = (group: string): boolean => of === null || of === group;
  return {
    ...lab,
    machines: lab.machines.map((machine) => (isMeant(machine.name) ? slower(machine, factor) : machine)),
    parts: lab.parts.map((part) => (buildsOn(part).some(isMeant) ? longer(part, factor) : part)),
  };
}

function slower(machine: MachineGroup, factor: number): MachineGroup {
  const { shaped, firstLayers } = machine;
  return {
    ...machine,
    shaped: shaped && { ...shaped, timeFactor: scaleDistribution(shaped.timeFactor, factor) },
    firstLayers: firstLayers && scaleWork(firstLayers, factor),
  };
}

function longer(part: PartType, factor: number): PartType {
  const { print } = part;
  if (print === null || print.kind === 'shape') return part;
  return {
    ...part,
    print: {
      ...print,
      perBuild: scaleDuration(print.perBuild, factor),
      perPart: scaleDuration(print.perPart, factor),
    },
  };
}

function buildsOn({ stages }: PartType): string[] {
  return stages.flatMap((stage) => (stage.kind === 'build' ? [stage.machineGroup] : []));
}
