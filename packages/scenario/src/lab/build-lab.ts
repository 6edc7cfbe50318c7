import type { Lab, WorkingDayRule } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { Scenario } from '../scenario.ts';
import { dateText } from '../words/dates.ts';
import { attendedPlaces } from './attended-places.ts';
import { buildCalendars } from './build-calendars.ts';
import { buildDemand } from './build-demand.ts';
import { buildInitialState } from './build-initial-state.ts';
import { buildMachines, buildParts } from './build-parts.ts';
import { buildPeople } from './build-people.ts';
import { checkConditions } from './check-conditions.ts';
import { checkDates } from './check-dates.ts';
import { checkInitialBuilds } from './check-initial-builds.ts';
import { checkLaunch } from './check-launch.ts';
import { checkMoney } from './check-money.ts';
import { checkNoneOwned, inUse } from './check-none-owned.ts';
import { checkPeople } from './check-people.ts';
import { checkSkills, checkUnused } from './check-unused.ts';
import { resolves } from './names.ts';

/**
 * Looks up the names of a scenario, counts its dates from the start, and checks that the lab can work.
 *
 * @param deadlines that have to be looked at beside the promises
 */
export function buildLab(
  scenario: Scenario,
  reading: Reading,
  deadlines: readonly WorkingDayRule[] = [],
): Lab {
  checkNames(scenario, reading);
  const built = buildCalendars(scenario, reading);
  const parts = buildParts(scenario, reading);
  const lab: Lab = {
    name: scenario.name,
    startDate: dateText(scenario.startDay),
    clockChanges: built.clockChanges,
    calendars: built.calendars,
    labCalendar: built.labCalendar,
    people: buildPeople(scenario, built.calendars, reading),
    machines: buildMachines(scenario),
    stations: scenario.stations.map(({ times: _, ...station }) => station),
    carriers: scenario.carriers,
    parts,
    demand: buildDemand(scenario, built, parts, reading),
    dispatch: scenario.dispatch,
    initialState: buildInitialState(scenario, parts, reading),
    deadlines,
  };
  // Who can do what is judged on groups and hours that are right; else one mistake would be told many times.
  const isSound =
    !reading.isMisspelt([]) &&
    ['hours', 'people', 'machines', 'stations'].every((section) => !reading.hasErrorsWithin([section]));
  if (isSound) {
    checkNoneOwned(lab, reading);
    const used = inUse(lab);
    checkPeople(attendedPlaces(used, reading), lab, reading);
    checkConditions(used, reading);
    checkLaunch(used, reading);
  }
  checkMoney(scenario.money, lab, reading);
  if (!reading.hasErrors) {
    checkUnused(scenario, built.labCalendar, reading);
    const needed = attendedPlaces(lab, reading).map(({ work }) => work.skill);
    checkSkills(scenario, needed, reading);
    checkDates(scenario, reading);
    checkInitialBuilds(lab, reading);
  }
  return lab;
}

/** Machines and stations are referred to in one way, so that their names have to differ. */
function checkNames(scenario: Scenario, reading: Reading): void {
  const machines = scenario.machines.map((machine) => machine.name);
  for (const { name } of scenario.stations) {
    if (!machines.includes(name)) continue;
    reading.report(['stations', name], 'key', {
      message: `"${name}" is the name of machines and of stations.`,
      found: name,
      expected: 'different names',
      write: `${name} station`,
    });
  }
  const carriers = scenario.carriers.map((pool) => pool.name);
  for (const { name, carrier } of scenario.machines) {
    if (carrier !== null) resolves(reading, ['machines', name, 'carrier'], carrier, 'carrier', carriers);
  }
}
