import type { HandLoad } from '@buildweek/results';

/** Hours asked for over hours there, as a load. */
export function handLoad(
  name: string,
  kind: HandLoad['kind'],
  count: number,
  demandHoursPerWeek: number,
  availableHoursPerWeek: number,
  note: string,
): HandLoad {
  const load = availableHoursPerWeek === 0 ? 0 : demandHoursPerWeek / availableHoursPerWeek;
  return { name, kind, count, demandHoursPerWeek, availableHoursPerWeek, load, note };
}

/** Three digits, for notes. */
export function figure(value: number): string {
  return String(Number(value.toPrecision(3)));
}
