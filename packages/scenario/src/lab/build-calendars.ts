import type { ClockChange, WorkingCalendar } from '@buildweek/model';
import { nearest } from '../nearest.ts';
import { ALWAYS, ALWAYS_OPEN } from '../read/read-hours.ts';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioCalendar } from '../scenario.ts';
import { clockChanges, isZone, zoneNames } from '../zone.ts';
import { equipmentHours } from './equipment-hours.ts';
import { resolves } from './names.ts';

export interface BuiltCalendars {
  readonly calendars: readonly WorkingCalendar[];
  readonly labCalendar: string;
  readonly clockChanges: readonly ClockChange[];
}

/** Calendars counted from the start of the plan, and the one that promises are made by. */
export function buildCalendars(scenario: Scenario, reading: Reading): BuiltCalendars {
  const names = [...namesOf(scenario), ALWAYS];
  const usual = scenario.calendars[0]?.name ?? ALWAYS;
  const labCalendar = scenario.labHours ?? usual;
  if (scenario.labHours === null) reading.assume(['lab hours'], usual, 'default of the program');
  else resolves(reading, ['lab hours'], scenario.labHours, 'hours', names);
  for (const group of scenario.people) {
    resolves(reading, ['people', group.name, 'hours'], group.calendar, 'hours', names);
  }
  for (const { path, name } of equipmentHours(scenario, reading))
    resolves(reading, path, name, 'hours', names);
  const referred = new Set([labCalendar, ...scenario.people.map((group) => group.calendar)]);
  const calendars = scenario.calendars.map((calendar) => fromStart(calendar, scenario));
  if (referred.has(ALWAYS) || calendars.length === 0)
    calendars.push(fromStart(ALWAYS_OPEN, { ...scenario, closedDays: [] }));
  return { calendars, labCalendar, clockChanges: zoneChanges(scenario, reading) };
}

/** Names under which hours can be referred to. */
export function namesOf(scenario: Scenario): string[] {
  return scenario.calendars.map((calendar) => calendar.name);
}

function fromStart(calendar: ScenarioCalendar, scenario: Scenario): WorkingCalendar {
  const closedDays = [...new Set([...scenario.closedDays, ...calendar.closedDays])]
    .map((day) => day - scenario.startDay)
    // The Sunday before may reach into the first Monday; what lies further back has no effect.
    .filter((day) => day >= -1)
    .sort((a, b) => a - b);
  const closed = new Set(scenario.closedDays);
  const shifts = (calendar.shifts ?? []).filter(({ day }) => !closed.has(day));
  const extra = [...calendar.extra, ...shifts]
    .map(({ day, span }) => {
      const midnight = (day - scenario.startDay) * 24;
      return { fromHour: midnight + span.fromHour, toHour: midnight + span.toHour };
    })
    .filter((span) => span.toHour > 0)
    .sort((a, b) => a.fromHour - b.fromHour);
  return { name: calendar.name, weekly: calendar.weekly, closedDays, extra };
}

function zoneChanges(scenario: Scenario, reading: Reading): ClockChange[] {
  const { zone } = scenario;
  if (zone === null) return [];
  if (isZone(zone)) return clockChanges(zone, scenario.startDay);
  const names = zoneNames();
  reading.report(['zone'], 'value', {
    message: `There is no time zone called "${zone}".`,
    found: zone,
    expected: 'a name of the time zone database: continent and city',
    write:
      nearest(zone, names) ??
      names.find((name) => name.toLowerCase().endsWith(`/${zone.toLowerCase()}`)) ??
      'Europe/Lisbon',
  });
  return [];
}
