import type { AttendedWork, EquipmentConditions, Lab } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { SourcePath } from '../source/source-node.ts';
import type { AttendedPlace } from './attended-place.ts';
import { itemPath } from './item-path.ts';

/** Repairs, chores and cleaning of machines and stations, with their places in the file. */
export function placesOfUpkeep(lab: Lab, reading: Reading): AttendedPlace[] {
  return [
    ...lab.machines.flatMap((machine) => {
      const path = ['machines', machine.name];
      const cleaning = machine.failure?.cleaning ?? null;
      const places = placesOf(machine, machine.name, path, reading);
      if (cleaning === null) return places;
      const what = `cleaning of "${machine.name}" behind a failed build`;
      return [...places, place([...path, 'fails', 'cleaning'], what, cleaning)];
    }),
    ...lab.stations.flatMap((station) =>
      placesOf(station, station.name, ['stations', station.name], reading),
    ),
  ];
}

function placesOf(
  conditions: EquipmentConditions,
  name: string,
  path: SourcePath,
  reading: Reading,
): AttendedPlace[] {
  const { breakdowns, chores } = conditions;
  const repairs = breakdowns.flatMap(({ repair }, index) => {
    return repair.kind === 'own'
      ? [
          place(
            [...itemPath(reading, [...path, 'breaks down'], index), 'repair'],
            `repair of "${name}"`,
            repair.work,
          ),
        ]
      : [];
  });
  const dues = chores.flatMap((chore) => {
    const kind = chore.kind === 'maintenance' ? 'maintenance' : 'test prints';
    const ofKind = chores.filter((other) => other.kind === chore.kind);
    if (chore.work === null) return [];
    const what = chore.name === kind ? `${kind} of "${name}"` : `${kind} "${chore.name}" of "${name}"`;
    return [place(itemPath(reading, [...path, kind], ofKind.indexOf(chore)), what, chore.work)];
  });
  return [...repairs, ...dues];
}

function place(path: SourcePath, what: string, work: AttendedWork): AttendedPlace {
  return { path, what, work, most: 1, because: '' };
}
