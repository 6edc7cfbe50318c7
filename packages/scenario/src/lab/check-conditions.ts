import type { EquipmentConditions, HourSpan, Lab, WorkingCalendar } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { SourcePath } from '../source/source-node.ts';
import { checkRunning } from './check-running.ts';
import { itemPath } from './item-path.ts';
import { openWindows } from './open-windows.ts';

/** Finds equipment that can never be repaired, never be noticed, is never there, or may never run long enough. */
export function checkConditions(lab: Lab, reading: Reading): void {
  for (const { section, groups } of [
    { section: 'machines', groups: lab.machines },
    { section: 'stations', groups: lab.stations },
  ]) {
    for (const group of groups) checkGroup(group, [section, group.name], lab, reading);
  }
  if (!reading.hasErrors) checkRunning(lab, reading);
}

function checkGroup(
  group: EquipmentConditions & { name: string; failure?: unknown },
  path: SourcePath,
  lab: Lab,
  reading: Reading,
): void {
  checkHours(group.calendar, [...path, 'available'], `"${group.name}" is never there`, lab, reading);
  group.breakdowns.forEach(({ repair, name }, index) => {
    if (repair.kind !== 'service') return;
    const hoursPath = [...itemPath(reading, [...path, 'breaks down'], index), 'service', 'hours'];
    checkHours(repair.calendar, hoursPath, `Nobody ever comes for "${name}"`, lab, reading);
  });
  const needsNotice = group.breakdowns.length > 0 || (group.failure ?? null) !== null;
  if (!needsNotice || group.noticing.kind === 'monitored' || somebodyComes(lab)) return;
  // That there is nobody of a group has been told.
  if (reading.hasErrorsWithin(['people'])) return;
  const isFailure = group.breakdowns.length === 0;
  const key = isFailure ? 'fails' : 'breaks down';
  reading.report([...path, key], 'key', {
    message: `Nobody ever learns that "${group.name}" has stopped: no people ever come to this lab.`,
    found: key,
    expected: 'people who come, or a machine that is monitored',
    write: 'noticed: monitored',
  });
}

function checkHours(name: string | null, path: SourcePath, what: string, lab: Lab, reading: Reading): void {
  const calendar = lab.calendars.find((candidate) => candidate.name === name);
  if (calendar === undefined || windowsOf(calendar).length > 0) return;
  reading.report(path, 'value', {
    message: `${what}: the hours "${calendar.name}" have no windows.`,
    found: calendar.name,
    expected: 'hours with windows',
    write: 'always, or hours such as { mon-fri: 08:00-16:00 }',
  });
}

function somebodyComes(lab: Lab): boolean {
  return lab.people.some((group) => {
    if (group.count === 0) return false;
    const calendar = lab.calendars.find((candidate) => candidate.name === group.calendar);
    return calendar !== undefined && windowsOf(calendar).length > 0;
  });
}

function windowsOf(calendar: WorkingCalendar): HourSpan[] {
  return openWindows([...calendar.extra], calendar.weekly);
}
