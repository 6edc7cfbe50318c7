import { formatEstimate, formatShare, formatValue, HOURS_PER_WEEK, PERCENT, PLAIN } from '@buildweek/charts';
import {
  type Estimate,
  type EstimateOrRefused,
  type MachineUse,
  type PeopleUse,
  type StateUse,
  type StationUse,
  type UnitState,
  useOfState,
} from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

interface UnitLine {
  readonly name: string;
  readonly states: readonly { readonly state: UnitState; readonly share: Estimate }[];
  readonly runsPerWeek: Estimate;
  readonly partsPerWeek: Estimate;
  readonly meanFill: EstimateOrRefused;
}

/** What each machine does with its time. */
export function machineTable(machines: readonly MachineUse[], style: Style): string {
  const lines = machines.map((machine) => ({ ...machine, runsPerWeek: machine.buildsPerWeek }));
  return unitTable('machine', 'builds a week', lines, style);
}

/** What each station does with its time. */
export function stationTable(stations: readonly StationUse[], style: Style): string {
  const lines = stations.map((station) => ({ ...station, runsPerWeek: station.batchesPerWeek }));
  return unitTable('station', 'batches a week', lines, style);
}

function unitTable(title: string, runs: string, lines: readonly UnitLine[], style: Style): string {
  const columns = [
    words(title),
    numbers('idle'),
    numbers('waiting to fill'),
    numbers('at work'),
    numbers('waiting for people'),
    numbers('out of use'),
    numbers(runs),
    numbers('parts a week'),
    numbers('mean fill'),
  ];
  return tableText(
    columns,
    lines.map(({ name, states, runsPerWeek, partsPerWeek, meanFill }) => {
      const share = (...uses: readonly StateUse[]): string =>
        formatShare(
          states.reduce((sum, one) => sum + (uses.includes(useOfState(one.state)) ? one.share.value : 0), 0),
        );
      const filling = states.find((one) => one.state === 'waiting to fill')?.share.value ?? 0;
      const idle = states.find((one) => one.state === 'idle');
      return {
        cells: [
          name,
          idle === undefined ? '' : formatEstimate(idle.share, PERCENT),
          formatShare(filling),
          share('at work'),
          share('waiting for people'),
          share('out of order', 'away'),
          formatEstimate(runsPerWeek, PLAIN),
          formatEstimate(partsPerWeek, PLAIN),
          meanFill.kind === 'estimate' ? formatValue(meanFill, PERCENT) : 'never ran',
        ],
      };
    }),
    style,
  );
}

/** What the people of each group do with their hours. */
export function peopleTable(people: readonly PeopleUse[], style: Style): string {
  const columns = [
    words('people'),
    numbers('count'),
    numbers('busy, of hours on duty'),
    numbers('hours a week: work'),
    numbers('other duties'),
    numbers('idle'),
    numbers('overtime'),
  ];
  return tableText(
    columns,
    people.map((group) => {
      const hours = (state: string): string => {
        const share = group.states.find((one) => one.state === state)?.share;
        if (share === undefined) return '';
        return formatEstimate(share, {
          ...PLAIN,
          size: 1 / (group.count * HOURS_PER_WEEK),
          leastDecimals: 1,
        });
      };
      const busy = group.busyShareOfDuty;
      return {
        cells: [
          group.group,
          String(group.count),
          busy.kind === 'estimate' ? formatEstimate(busy, PERCENT) : 'never on duty',
          hours('work'),
          hours('other duties'),
          hours('idle'),
          hours('overtime'),
        ],
      };
    }),
    style,
  );
}
