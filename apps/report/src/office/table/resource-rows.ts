import { MACHINE_STATE_PARTS, PERSON_STATE_PARTS, STATION_STATE_PARTS } from '@buildweek/charts';
import type { Estimate, EstimateOrRefused, Results } from '@buildweek/results';
import { type FigureName, type FigureRow, figureRow, knownRow } from './figure-row.ts';
import { bandRows } from './jobs-rows.ts';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** "Monday 07:00". */
function hourOfWeek(hour: number): string {
  return `${DAYS[Math.floor(hour / 24) % 7] ?? ''} ${String(hour % 24).padStart(2, '0')}:00`;
}

interface UnitUse {
  readonly name: string;
  readonly states: readonly { readonly state: string; readonly share: Estimate }[];
  readonly partsPerWeek: Estimate;
  readonly meanFill: EstimateOrRefused;
}

function unitRows(
  section: string,
  unit: UnitUse,
  labels: Readonly<Record<string, { readonly label: string }>>,
  runs: readonly [string, Estimate],
): FigureRow[] {
  const of = (measure: string, inUnit: string): FigureName => ({
    section,
    subject: unit.name,
    measure,
    unit: inUnit,
  });
  return [
    ...unit.states.map(({ state, share }) =>
      figureRow(of(labels[state]?.label ?? state, 'share of calendar time'), share),
    ),
    figureRow(of(runs[0], 'per week'), runs[1]),
    figureRow(of('parts', 'per week'), unit.partsPerWeek),
    figureRow(of('mean fill', 'share of capacity'), unit.meanFill),
  ];
}

/** What every machine and station does with its hours. */
export function unitUseRows({ machines, stations }: Results): FigureRow[] {
  return [
    ...machines.flatMap((one) =>
      unitRows('Machines', one, MACHINE_STATE_PARTS, ['builds', one.buildsPerWeek]),
    ),
    ...stations.flatMap((one) =>
      unitRows('Stations', one, STATION_STATE_PARTS, ['batches', one.batchesPerWeek]),
    ),
  ];
}

/** How the hours of people are spent, over all and by the hour of the week. */
export function peopleRows({ people }: Results): FigureRow[] {
  return people.flatMap((group) => {
    const of = (measure: string, unit: string): FigureName => ({
      section: 'People',
      subject: group.group,
      measure,
      unit,
    });
    return [
      knownRow(of('persons', 'persons'), group.count),
      figureRow(of('busy', 'share of the hours on duty'), group.busyShareOfDuty),
      ...group.states.map(({ state, share }) =>
        figureRow(of(PERSON_STATE_PARTS[state].label, 'share of calendar time'), share),
      ),
      ...group.hoursByStage.map(({ stage, hoursPerWeek }) =>
        figureRow(of(stage, 'hours per week'), hoursPerWeek),
      ),
      ...bandRows(group.busyByHourOfWeek, (hour) => of(`at work, ${hourOfWeek(hour)}`, 'persons')),
      ...group.onDutyByHourOfWeek.map((persons, hour) =>
        knownRow(of(`on duty, ${hourOfWeek(hour)}`, 'persons'), persons),
      ),
    ];
  });
}

/** What is waited for, over all, by the hour of the week and by the week of the plan. */
export function queueRows({ queues }: Results): FigureRow[] {
  return queues.flatMap((queue) => {
    const of = (measure: string, unit: string): FigureName => ({
      section: 'Queues',
      subject: queue.kind === 'all' ? 'jobs in the lab' : `${queue.name} (${queue.kind})`,
      measure,
      unit,
    });
    return [
      figureRow(of('jobs waiting', 'jobs at a time'), queue.meanLength),
      figureRow(of('wait of each job', 'hours'), queue.meanWait),
      ...queue.waitPercentiles.flatMap(({ share, longRun, onePeriod }) => {
        const within = of(`wait that ${share * 100} % stay below`, 'hours');
        return [figureRow(within, longRun), figureRow(within, onePeriod)];
      }),
      ...bandRows(queue.byHourOfWeek, (hour) => of(`jobs waiting, ${hourOfWeek(hour)}`, 'jobs at a time')),
      ...bandRows(queue.byWeek, (week) => of(`jobs waiting, week ${week + 1}`, 'jobs at a time')),
    ];
  });
}

/** Builds that were packed from the shapes of their parts. */
export function buildRows({ builds }: Results): FigureRow[] {
  return builds.flatMap((one) => {
    const of = (measure: string, unit: string): FigureName => ({
      section: 'Builds',
      subject: one.group,
      measure,
      unit,
    });
    return [
      figureRow(of('parts in a build', 'parts'), one.partsPerBuild),
      figureRow(of('fill', 'share'), one.meanFill),
      figureRow(of('height', 'mm'), one.meanHeight),
      knownRow(of('most height', 'mm'), one.mostHeight),
      figureRow(of('share of the part cake that is part', 'share'), one.packingDensity),
      ...(one.powder === null
        ? []
        : [
            figureRow(of('virgin powder into builds', 'kg per week'), one.powder.virgin),
            figureRow(of('used powder into builds', 'kg per week'), one.powder.used),
            figureRow(of('powder that comes back as used', 'kg per week'), one.powder.returned),
            figureRow(of('powder that has become parts', 'kg per week'), one.powder.inParts),
            figureRow(of('surplus of used powder', 'kg per week'), one.powder.surplus),
          ]),
    ];
  });
}

/** What goes wrong, and what is made outside. */
export function troubleRows({ trouble, sentOut }: Results): FigureRow[] {
  const of =
    (section: string, subject: string) =>
    (measure: string, unit = 'per week'): FigureName => ({ section, subject, measure, unit });
  return [
    ...trouble.equipment.flatMap((group) => {
      const about = of('What goes wrong', group.group);
      return [
        knownRow(about(`${group.kind}s`, 'number'), group.count),
        figureRow(about('breakdowns'), group.breakdownsPerWeek),
        figureRow(about('lost builds'), group.failedBuildsPerWeek),
        figureRow(about('down', 'hours per week'), group.hoursDownPerWeek),
        figureRow(about('maintenance', 'hours per week'), group.hoursOfMaintenancePerWeek),
      ];
    }),
    ...trouble.parts.flatMap((part) => {
      const about = of('What goes wrong', part.part);
      return [
        figureRow(about('parts made again'), part.repeatedPartsPerWeek),
        figureRow(about('jobs cancelled'), part.cancelledJobsPerWeek),
        ...part.waitedTooLong.map(({ stage, jobsPerWeek }) =>
          figureRow(about(`jobs that waited too long for ${stage}`), jobsPerWeek),
        ),
      ];
    }),
    ...sentOut.flatMap(({ part, jobs, sentOut: sent, share, jobsPerWeek, partsPerWeek }) => {
      const about = of('Sent out', part ?? 'All jobs');
      return [
        knownRow(about('jobs played', 'jobs'), jobs),
        knownRow(about('jobs sent out', 'jobs'), sent),
        figureRow(about('jobs sent out', 'share'), share),
        figureRow(about('jobs back'), jobsPerWeek),
        figureRow(about('parts back'), partsPerWeek),
      ];
    }),
  ];
}
