import {
  HOURS,
  HOURS_PER_WEEK,
  MACHINE_STATE_PARTS,
  PERCENT,
  PERSON_STATE_PARTS,
  PLAIN,
  STATION_STATE_PARTS,
  stepName,
  WAIT_CAUSE_PARTS,
} from '@buildweek/charts';
import type { Estimate, EstimateOrRefused, Results } from '@buildweek/results';
import type { Grid } from './block.ts';
import { Cells, numbers } from './cells.ts';

interface Unit {
  readonly name: string;
  readonly states: readonly { readonly state: string; readonly share: Estimate }[];
  readonly runs: Estimate;
  readonly partsPerWeek: Estimate;
  readonly meanFill: EstimateOrRefused;
}

type StateParts = Readonly<Record<string, { readonly code: string; readonly label: string }>>;

/** Shares of all hours, one column for each state that occurs. */
function unitGrid(caption: string, units: readonly Unit[], parts: StateParts, runs: string): Grid[] {
  const cells = new Cells();
  const states = Object.entries(parts)
    .filter(([state]) =>
      units.some((unit) => unit.states.some((one) => one.state === state && one.share.value > 0)),
    )
    .sort(([, one], [, other]) => (one.code < other.code ? -1 : 1));
  return cells.grid(
    caption,
    [
      { title: 'Name' },
      ...states.map(([, { label }]) => numbers(`${label}, %`)),
      numbers(`${runs} a week`),
      numbers('Parts a week'),
      numbers('Mean fill, %'),
    ],
    units.map((unit) => [
      unit.name,
      ...states.map(([state]) =>
        cells.estimate(unit.states.find((one) => one.state === state)?.share, PERCENT),
      ),
      cells.estimate(unit.runs, PLAIN),
      cells.estimate(unit.partsPerWeek, PLAIN),
      cells.estimate(unit.meanFill, PERCENT),
    ]),
  );
}

/** What each machine does with its hours. */
export function machinesGrid({ machines }: Results): Grid[] {
  return unitGrid(
    'Machines: shares of all hours of the week, day and night, with intervals',
    machines.map((machine) => ({ ...machine, runs: machine.buildsPerWeek })),
    MACHINE_STATE_PARTS,
    'Builds',
  );
}

/** What each station does with its hours. */
export function stationsGrid({ stations }: Results): Grid[] {
  return unitGrid(
    'Stations: shares of all hours of the week, day and night, with intervals',
    stations.map((station) => ({ ...station, runs: station.batchesPerWeek })),
    STATION_STATE_PARTS,
    'Batches',
  );
}

/** How the hours of people are spent. */
export function peopleGrid({ people }: Results): Grid[] {
  const cells = new Cells();
  const weekHours: typeof HOURS = { ...HOURS, size: 1 / HOURS_PER_WEEK };
  const states = ['work', 'other duties', 'idle', 'overtime'] as const;
  return cells.grid(
    'Hours of one person in an average week, with intervals',
    [
      { title: 'Group' },
      numbers('Persons'),
      numbers('Busy, % of duty'),
      ...states.map((state) => numbers(`${PERSON_STATE_PARTS[state].label}, h`)),
    ],
    people.map((group) => [
      group.group,
      String(group.count),
      cells.estimate(group.busyShareOfDuty, PERCENT),
      ...states.map((state) =>
        cells.estimate(group.states.find((one) => one.state === state)?.share, weekHours),
      ),
    ]),
  );
}

/** What the hours of people go to. */
export function stagesGrid({ people }: Results): Grid[] {
  const cells = new Cells();
  const stages = [...new Set(people.flatMap((group) => group.hoursByStage.map((one) => one.stage)))];
  return cells.grid(
    'Hours of each group by kind of work, per week, with intervals',
    [{ title: 'Work' }, ...people.map((group) => numbers(`${group.group}, h`))],
    stages.map((stage) => [
      stage,
      ...people.map((group) =>
        cells.estimate(group.hoursByStage.find((one) => one.stage === stage)?.hoursPerWeek, HOURS),
      ),
    ]),
  );
}

/** Every step of every part type: its work, and what was waited for before it. */
export function stepGrids({ hours }: Results): Grid[] {
  return hours.flatMap((part) => {
    const cells = new Cells();
    return cells.grid(
      `${part.part}: hours per finished job, with intervals; route “${part.route}”`,
      [{ title: 'Step' }, { title: 'Hands' }, numbers('Work, h'), { title: 'Waits before it, h' }],
      part.steps.map((step) => [
        stepName(step),
        step.attended ? 'attended' : 'by itself',
        cells.estimate(step.work, HOURS),
        [...step.waits]
          .sort((one, other) => other.hours.value - one.hours.value)
          .map((wait) => {
            const found = cells.estimate(wait.hours, HOURS);
            const figure = typeof found === 'string' ? found : `${found.value} (${found.range})`;
            return `${WAIT_CAUSE_PARTS[wait.cause].label} ${figure}`;
          })
          .join('; '),
      ]),
    );
  });
}
