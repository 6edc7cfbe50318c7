import { MACHINE_STATES, type MachineState, type MachineUse, type Results } from '@buildweek/results';
import type { Chart, ChartSize } from './chart.ts';
import { formatEstimate, formatShare, PERCENT, shorten } from './format.ts';
import { intervalWords } from './interval-words.ts';
import { MACHINE_STATE_PARTS } from './palette.ts';
import { stackedBars } from './stacked-bars.ts';
import { barOfStates, describeStates, meanShare, meanShareHeld } from './states-of-units.ts';
import { themeFor } from './theme.ts';

/** Print first, what holds the machine up next, idle last. */
const ORDER: readonly MachineState[] = [...MACHINE_STATES].sort((one, other) =>
  MACHINE_STATE_PARTS[one].code < MACHINE_STATE_PARTS[other].code ? -1 : 1,
);

function groupNames(machines: readonly MachineUse[]): string[] {
  return [...new Set(machines.map((machine) => machine.group))];
}

function titleOf(machines: readonly MachineUse[]): string {
  const [busiest] = groupNames(machines)
    .map((name) => {
      const units = machines.filter((machine) => machine.group === name);
      return {
        name,
        held: meanShareHeld(units),
        waiting: meanShare(units, (state) => state === 'waiting to be unloaded'),
      };
    })
    .sort((one, other) => other.held.value - one.held.value);
  if (busiest === undefined) return 'The lab has no machines';
  return (
    `Busiest machines: ${shorten(busiest.name)}, held ${formatEstimate(busiest.held, PERCENT)} of the week, ` +
    `${formatShare(busiest.waiting.value)} waiting to be unloaded`
  );
}

/** What each machine does, as shares of calendar time. */
export function machineStates(results: Results, size: ChartSize): Chart {
  const { machines } = results;
  return {
    id: 'machine-states',
    title: titleOf(machines),
    description: `Shares of all hours, day and night, that each machine spends in each state. ${describeStates(machines)}`,
    spec: {
      config: themeFor(size),
      ...stackedBars({
        bars: machines.map((machine) => barOfStates(machine, ORDER, MACHINE_STATE_PARTS)),
        size,
        axisTitle: 'share of all hours of the week, day and night',
        shares: true,
        top: 1,
        endTitle: '',
      }),
    },
    footnote:
      'Blue: something happens. Orange: the machine is held up until somebody comes. Pale yellow, waiting to fill: parts are there, the build is not full enough. Light grey: idle. ' +
      `Whisker where idle begins: ${intervalWords(results.run)}. Pieces too small for a label are in the table.`,
  };
}
