import type { Lab } from '@buildweek/model';
import { dutyTable } from './duty-table.ts';
import type { Person } from './floor.ts';

/** For every minute since when somebody has been in without a break; -1 while nobody is. */
export function attendedSince(people: readonly Person[]): Int32Array {
  const length = Math.max(0, ...people.map((person) => person.windowEnds.length));
  const since = new Int32Array(length).fill(-1);
  for (let minute = 0; minute < length; minute++) {
    if (!people.some((person) => (person.windowEnds[minute] ?? 0) > 0)) continue;
    const before = since[minute - 1] ?? -1;
    since[minute] = before < 0 ? minute : before;
  }
  return since;
}

/** For each group that may not always run alone and every minute: 1 when it may, or somebody is in. */
export function permissionsOf(lab: Lab, people: readonly Person[], weeks: number): Map<string, Uint8Array> {
  const attended = attendedSince(people);
  const permissions = new Map<string, Uint8Array>();
  for (const { name, unattendedHours } of [...lab.machines, ...lab.stations]) {
    if (unattendedHours === null) continue;
    const weekly = { name: '', weekly: unattendedHours, closedDays: [], extra: [] };
    const allowed = dutyTable(weekly, lab.clockChanges, weeks);
    permissions.set(
      name,
      Uint8Array.from(allowed, (end, minute) => (end > 0 || (attended[minute] ?? -1) >= 0 ? 1 : 0)),
    );
  }
  return permissions;
}
