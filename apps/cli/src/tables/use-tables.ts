import { formatEstimate, formatShare, formatValue, HOURS_PER_WEEK, PERCENT, PLAIN } from '@buildweek/charts';
import type { Estimate, EstimateOrRefused, MachineUse, PeopleUse, StationUse } from '@buildweek/results';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

interface UnitLine {
  readonly name: string;
  readonly states: readonly { readonly state: string; readonly share: Estimate }[];
  readonly runsPerWeek: Estimate;
  readonly partsPerWeek: Estimate;
  readonly meanFill: EstimateOrRefused;
}

/** States of a machine or a station in the columns of the table; the rest of the time it is idle. */
const WAITING = new Set(['waiting to start', 'waiting to be unloaded']);
const OUT_OF_USE = new Set(['maintenance', 'test print', 'down', 'off']);

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
      const share = (counts: (state: string) => boolean): string =>
        formatShare(states.reduce((sum, one) => sum + (counts(one.state) ? one.share.value : 0), 0));
      const idle = states.find((one) => one.state === 'idle');
      return {
        cells: [
          name,
          idle === undefined ? '' : formatEstimate(idle.share, PERCENT),
          share((state) => state !== 'idle' && !OUT_OF_USE.has(state) && !WAITING.has(state)),
          share((state) => WAITING.has(state)),
          share((state) => OUT_OF_USE.has(state)),
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
