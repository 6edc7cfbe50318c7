import type { Fields } from '../fields.ts';
import type { Scenario } from '../scenario.ts';
import { anyText } from '../words/choice.ts';
import { monday } from '../words/dates.ts';
import { placesAsked } from './places-asked.ts';
import { readJobsAtStart, readMachinesAtStart, readNow } from './read-at-the-start.ts';
import { readDemand } from './read-demand.ts';
import { readHours } from './read-hours.ts';
import { readMachines } from './read-machines.ts';
import { readMoney } from './read-money.ts';
import { readParts } from './read-parts.ts';
import { readPeople } from './read-people.ts';
import { readRoutes } from './read-routes.ts';
import { readDispatch, readSettings } from './read-settings.ts';
import { readStaff } from './read-staff.ts';
import { readCarriers, readStations } from './read-stations.ts';
import { readTargets } from './read-targets.ts';

/** A Monday long before any plan, so that a file without a date does not depend on the day it is read. */
const USUAL_START = '2024-01-01';

/** Reads everything a file says; what is wrong is reported, and something harmless stands in for it. */
export function readFile(fields: Fields): Scenario {
  const fileName = fields.reading.source.fileName.replace(/^.*[/\\]/, '').replace(/\.[^.]*$/, '');
  const name = fields.read('name', anyText, fileName === '' ? 'a plan without a name' : fileName) ?? fileName;
  const startDay = fields.readOr('starts', monday, USUAL_START);
  const zone = fields.read('zone', anyText) ?? null;
  if (!fields.has('zone')) fields.assume('zone', 'none: no clock changes');
  const settings = readSettings(fields);
  const { calendars, closedDays } = readHours(fields);
  const labHours = fields.read('lab hours', anyText) ?? null;
  const { people, inPlace } = readPeople(fields, calendars);
  const asked = placesAsked(fields);
  const money = readMoney(fields);
  return {
    name,
    startDay,
    zone,
    settings,
    calendars: [...calendars, ...inPlace],
    closedDays,
    labHours,
    people,
    machines: readMachines(fields, asked.byShape),
    stations: readStations(fields, asked),
    carriers: readCarriers(fields),
    routes: readRoutes(fields),
    parts: readParts(fields),
    demand: readDemand(fields),
    dispatch: readDispatch(fields),
    now: readNow(fields),
    jobsAtStart: readJobsAtStart(fields),
    machinesAtStart: readMachinesAtStart(fields),
    targets: readTargets(fields, money?.currency),
    money,
    staff: readStaff(fields),
  };
}
