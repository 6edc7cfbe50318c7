import type { Distribution, Duration, Lab, MachineGroup } from '@buildweek/model';

/** The same lab with nothing random in it: everything takes as long as it typically does. */
export function typicalLab(lab: Lab): Lab {
  return { ...asTypical(lab), machines: lab.machines.map(typicalMachine) };
}

function typicalMachine(machine: MachineGroup): MachineGroup {
  const { shaped } = machine;
  const one: Distribution = { kind: 'constant', value: 1 };
  return { ...asTypical(machine), shaped: shaped === null ? null : { ...shaped, timeFactor: one } };
}

/** Replaces every duration in a piece of plain data, at whatever depth, by the constant that is typical of it. */
function asTypical<Value>(value: Value): Value {
  if (typeof value !== 'object' || value === null) return value;
  if (isDuration(value)) {
    return { ...value, distribution: { kind: 'constant', value: value.typicalHours } };
  }
  const copy = Array.isArray(value)
    ? value.map(asTypical)
    : Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, asTypical(entry)]));
  return copy as Value;
}

function isDuration(value: object): value is Duration {
  return 'distribution' in value && 'typicalHours' in value;
}
