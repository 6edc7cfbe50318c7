import type { CarrierPool, DurationBasis } from '@buildweek/model';
import { STATION_CLASSES } from '../classes/station-classes.ts';
import { STATION_VOLUMES } from '../classes/station-volumes.ts';
import { typicalText } from '../classes/typical-value.ts';
import type { Fields } from '../fields.ts';
import type { ScenarioStation, StationTimes } from '../scenario.ts';
import { stationCapacity } from '../words/capacity.ts';
import { anyText, choice, yesNo } from '../words/choice.ts';
import { stationStart } from '../words/launch.ts';
import { MOST_ALIKE, wholeNumber } from '../words/numbers.ts';
import { stageTime } from '../words/stage-time.ts';
import { readAttendedWork, USUAL_SKILL } from './attended-work.ts';
import type { PlacesAsked } from './places-asked.ts';
import { readConditions } from './read-conditions.ts';

export const STATION_BASES: readonly DurationBasis[] = ['batch', 'job', 'part', 'build'];

/** @param asked which stations parts come to, with and without a shape */
export function readStations(fields: Fields, asked: PlacesAsked): ScenarioStation[] {
  return fields.names('stations').map((name): ScenarioStation => {
    const written = fields.group('stations').group(name);
    const className = written.read('class', choice(...STATION_CLASSES.keys()));
    // Parts whose shape is not known can only be counted.
    const volume =
      asked.byShape.has(name) && !asked.byType.has(name) ? STATION_VOLUMES.get(className ?? '') : undefined;
    const station = written.withClass({
      ...STATION_CLASSES.get(className ?? ''),
      ...(volume === undefined ? {} : { holds: typicalText(volume) }),
    });
    const times = readStationTimes(station);
    return {
      name,
      count: station.readOr('count', wholeNumber(0, '2', MOST_ALIKE), '1'),
      ...station.readOr('holds', stationCapacity, '1 job'),
      ...station.readOr('start', stationStart, 'at once'),
      ...readConditions(station, 'station', times.by ?? USUAL_SKILL, null),
      times,
    };
  });
}

/** What a station, or a stage at one, says of the work there. */
export function readStationTimes(fields: Fields): StationTimes {
  return {
    run: fields.read('takes', stageTime(STATION_BASES)),
    load: readAttendedWork(fields, 'load'),
    unload: readAttendedWork(fields, 'unload'),
    by: fields.read('by', anyText),
    attended: fields.read('attended', yesNo),
    persons: fields.read('people', wholeNumber(1, '2')),
    pausable: fields.read('may pause', yesNo),
  };
}

export function readCarriers(fields: Fields): CarrierPool[] {
  const carriers = fields.group('carriers');
  return fields.names('carriers').map((name) => ({
    name,
    count: carriers.read(name, wholeNumber(1, '4', MOST_ALIKE)) ?? 1,
  }));
}
