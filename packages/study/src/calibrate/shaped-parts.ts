import type { Lab, MachineGroup, PartShape, PartType, ShapedBuilds } from '@buildweek/model';
import type { RowMistake } from './build-row.ts';

/** A machine group whose print times follow from shapes, with the parts that are built on it. */
export interface CalibratedMachines {
  readonly name: string;
  readonly builds: ShapedBuilds;
  readonly parts: readonly { readonly name: string; readonly shape: PartShape }[];
}

/** What a list of builds cannot be held against, and why. */
export interface NotCalibrated {
  readonly reason: string;
}

/** @param name of the machine group, as the scenario has it */
export function calibratedMachines(lab: Lab, name: string): CalibratedMachines | NotCalibrated {
  const machine = lab.machines.find((group) => group.name === name);
  const candidates = lab.machines.filter((group) => shapedOn(lab, group.name).length > 0);
  const others = candidates.map((group) => `"${group.name}"`).join(', ');
  const ask = others === '' ? '' : ` There are: ${others}.`;
  if (machine === undefined) return { reason: `"${lab.name}" has no machines "${name}".${ask}` };
  const parts = shapedOn(lab, name);
  if (machine.shaped === null || parts.length === 0) {
    return {
      reason:
        `Print times of "${name}" are typed at its parts; there is nothing to fit. Give its parts a size and a ` +
        `volume, or a mesh, and the machine a platform.${others === '' ? '' : ` Machines with such parts: ${others}.`}`,
    };
  }
  return { name, builds: machine.shaped, parts };
}

function shapedOn(lab: Lab, machine: string): CalibratedMachines['parts'] {
  return lab.parts.flatMap((part) =>
    part.print?.kind === 'shape' && machineOf(part) === machine
      ? [{ name: part.name, shape: part.print.shape }]
      : [],
  );
}

function machineOf(part: PartType): MachineGroup['name'] | null {
  const build = part.stages.find((stage) => stage.kind === 'build');
  return build?.kind === 'build' ? build.machineGroup : null;
}

/** @returns the name of a part as the lab has it, or what is wrong with the one that is written */
export function partNamed(
  written: string,
  { name: machine, parts }: CalibratedMachines,
  lab: Lab,
): string | Omit<RowMistake, 'line' | 'column' | 'found'> {
  const same = ({ name }: { readonly name: string }): boolean => name.toLowerCase() === written.toLowerCase();
  const found = parts.find(({ name }) => name === written) ?? parts.find(same);
  if (found !== undefined) return found.name;
  const remedy = {
    expected: `a part that is built on "${machine}" and has a size or a mesh`,
    write: parts.map(({ name }) => name).join(' or '),
  };
  const known = lab.parts.find(same);
  if (known === undefined) return { message: `The scenario has no part "${written}".`, ...remedy };
  const place = machineOf(known);
  if (place === null) return { message: `"${known.name}" is not built on a machine.`, ...remedy };
  if (place !== machine) return { message: `"${known.name}" is built on "${place}".`, ...remedy };
  return { message: `"${known.name}" has a typed print time and no shape.`, ...remedy };
}
