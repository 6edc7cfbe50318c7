import {
  HOURS,
  HOURS_PER_WEEK,
  MACHINE_STATE_PARTS,
  PERCENT,
  PERSON_STATE_PARTS,
  PLAIN,
  STATION_STATE_PARTS,
} from '@buildweek/charts';
import type { Estimate, EstimateOrRefused, PeopleUse, Results } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { term } from '../glossary.ts';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';

interface Unit {
  readonly name: string;
  readonly states: readonly { readonly state: string; readonly share: Estimate }[];
  readonly runsPerWeek: Estimate;
  readonly partsPerWeek: Estimate;
  readonly meanFill: EstimateOrRefused;
}

/** A table of shares of calendar time, one column for each state that occurs. */
function unitTable(
  id: string,
  caption: string,
  units: readonly Unit[],
  labels: ReadonlyMap<string, string>,
  runs: string,
): Html {
  const states = [...labels.keys()].filter((state) =>
    units.some((unit) => unit.states.some((one) => one.state === state && one.share.value > 0)),
  );
  return table(
    id,
    caption,
    [
      { title: 'Name' },
      ...states.map((state) => ({ title: `${labels.get(state)}, %`, numeric: true })),
      { title: `${runs} a week`, numeric: true },
      { title: 'Parts a week', numeric: true },
      { title: 'Mean fill, %', numeric: true },
    ],
    units.map((unit) => [
      nameText(unit.name),
      ...states.map((state) => {
        const share = unit.states.find((one) => one.state === state)?.share;
        return share === undefined ? '' : estimateCell(share, PERCENT);
      }),
      estimateCell(unit.runsPerWeek, PLAIN),
      estimateCell(unit.partsPerWeek, PLAIN),
      estimateCell(unit.meanFill, PERCENT),
    ]),
    true,
  );
}

function labelsOf(
  parts: Readonly<Record<string, { readonly code: string; readonly label: string }>>,
): Map<string, string> {
  return new Map(
    Object.entries(parts)
      .sort(([, one], [, other]) => (one.code < other.code ? -1 : 1))
      .map(([state, part]) => [state, part.label]),
  );
}

/** Machines: what each does with its hours. */
export function machinesSection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (results.machines.length === 0) return html``;
  return html`
<section id="machines" aria-labelledby="machines-title">
<h2 id="machines-title">Machines</h2>
<p class="lede">A machine is held from set-up until it is unloaded. A build that ends in the night holds it until
somebody comes.</p>
${figure(charts, 'machine-states')}
<details class="more"><summary>Machines in numbers</summary>
${unitTable(
  'machines-table',
  'Machines: shares of all hours of the week, day and night, with intervals',
  results.machines.map((machine) => ({ ...machine, runsPerWeek: machine.buildsPerWeek })),
  labelsOf(MACHINE_STATE_PARTS),
  'Builds',
)}
</details>
</section>`;
}

/** Stations: what each does with its hours. */
export function stationsSection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (results.stations.length === 0) return html``;
  return html`
<section id="stations" aria-labelledby="stations-title">
<h2 id="stations-title">Stations</h2>
<p class="lede">Stations wash, cure, blast: they are loaded by hand, run by themselves, and are held until they are
emptied.</p>
${figure(charts, 'station-states')}
<details class="more"><summary>Stations in numbers</summary>
${unitTable(
  'stations-table',
  'Stations: shares of all hours of the week, day and night, with intervals',
  results.stations.map((station) => ({ ...station, runsPerWeek: station.batchesPerWeek })),
  labelsOf(STATION_STATE_PARTS),
  'Batches',
)}
</details>
</section>`;
}

function peopleTable(people: readonly PeopleUse[]): Html {
  const weekHours: typeof HOURS = { ...HOURS, size: 1 / HOURS_PER_WEEK };
  const states = ['work', 'other duties', 'idle', 'overtime'] as const;
  return table(
    'people-table',
    'Hours of one person in an average week, with intervals',
    [
      { title: 'Group' },
      { title: 'Persons', numeric: true },
      { title: 'Busy, % of duty', numeric: true },
      ...states.map((state) => ({ title: `${PERSON_STATE_PARTS[state].label}, h`, numeric: true })),
    ],
    people.map((group) => [
      nameText(group.group),
      group.count,
      estimateCell(group.busyShareOfDuty, PERCENT),
      ...states.map((state) => {
        const share = group.states.find((one) => one.state === state)?.share;
        return share === undefined ? '' : estimateCell(share, weekHours);
      }),
    ]),
  );
}

function stagesTable(people: readonly PeopleUse[]): Html {
  const stages = [...new Set(people.flatMap((group) => group.hoursByStage.map((one) => one.stage)))];
  return table(
    'stages-table',
    'Hours of each group by kind of work, per week, with intervals',
    [
      { title: 'Work' },
      ...people.map((group) => ({ title: html`${nameText(group.group)}, h`, numeric: true })),
    ],
    stages.map((stage) => [
      nameText(stage),
      ...people.map((group) => {
        const hours = group.hoursByStage.find((one) => one.stage === stage)?.hoursPerWeek;
        return hours === undefined ? '' : estimateCell(hours, HOURS);
      }),
    ]),
  );
}

/** People: how their hours are spent, and when hands are short. */
export function peopleSection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (results.people.length === 0) return html``;
  return html`
<section id="people" aria-labelledby="people-title">
<h2 id="people-title">People</h2>
<p class="lede">Attended work goes on only while somebody with the skill is there. Where nearly everybody is ${term('busy')}, work
waits, even when the week as a whole has room.</p>
${figure(charts, 'people-hours')}
${figure(charts, 'people-by-hour')}
${peopleTable(results.people)}
<details class="more"><summary>Hours by kind of work</summary>
${stagesTable(results.people)}
</details>
</section>`;
}
