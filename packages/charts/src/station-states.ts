import { type Results, STATION_STATES, type StationState } from '@buildweek/results';
import type { Chart, ChartSize } from './chart.ts';
import { formatEstimate, PERCENT, shorten } from './format.ts';
import { intervalWords } from './interval-words.ts';
import { STATION_STATE_PARTS } from './palette.ts';
import { stackedBars } from './stacked-bars.ts';
import { barOfStates, describeStates, meanShareHeld } from './states-of-units.ts';
import { themeFor } from './theme.ts';

const ORDER: readonly StationState[] = [...STATION_STATES].sort((one, other) =>
  STATION_STATE_PARTS[one].code < STATION_STATE_PARTS[other].code ? -1 : 1,
);

/** What each station does, as shares of calendar time. */
export function stationStates(results: Results, size: ChartSize): Chart {
  const { stations } = results;
  const [busiest] = stations
    .map((station) => ({ name: station.name, held: meanShareHeld([station]) }))
    .sort((one, other) => other.held.value - one.held.value);
  return {
    id: 'station-states',
    title:
      busiest === undefined
        ? 'The lab has no stations'
        : `Busiest station: ${shorten(busiest.name)}, held ${formatEstimate(busiest.held, PERCENT)} of the week`,
    description: `Shares of all hours, day and night, that each station spends in each state. ${describeStates(stations)}`,
    spec: {
      config: themeFor(size),
      ...stackedBars({
        bars: stations.map((station) => barOfStates(station, ORDER, STATION_STATE_PARTS)),
        size,
        axisTitle: 'share of all hours of the week, day and night',
        shares: true,
        top: 1,
        endTitle: '',
      }),
    },
    footnote:
      'Blue: something happens. Orange: the station is held up until somebody comes. Pale yellow, waiting to fill: parts are there, the batch is not full enough. Light grey: idle. ' +
      `Whisker where idle begins: ${intervalWords(results.run)}.`,
  };
}
