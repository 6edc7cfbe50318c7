import { AT_A_TIME, HOURS, MILLIMETRES, PERCENT, PLAIN } from '@buildweek/charts';
import type { Queue, Results } from '@buildweek/results';
import type { Grid } from './block.ts';
import { Cells, numbers } from './cells.ts';

const KINDS: Readonly<Record<Queue['kind'], string>> = {
  machine: 'machine',
  station: 'station',
  people: 'people',
  all: 'jobs in the lab',
};

/** What jobs wait for, the longest queue first. */
export function queuesGrid({ queues }: Results): Grid[] {
  const cells = new Cells();
  return cells.grid(
    'Queues, longest first, with intervals',
    [{ title: 'Waiting for' }, { title: 'Kind' }, numbers('Jobs waiting'), numbers('Wait of each job, h')],
    queues
      .filter((queue) => queue.kind !== 'all')
      .sort((one, other) => other.meanLength.value - one.meanLength.value)
      .map((queue) => [
        queue.name,
        KINDS[queue.kind],
        cells.estimate(queue.meanLength, AT_A_TIME),
        cells.estimate(queue.meanWait, HOURS),
      ]),
  );
}

/** What goes wrong with machines and stations. */
export function equipmentTroubleGrid({ trouble }: Results): Grid[] {
  const cells = new Cells();
  return cells.grid(
    'Machines and stations: a week of all of a group together, with intervals',
    [
      { title: 'Group' },
      numbers('Number'),
      numbers('Breakdowns'),
      numbers('Hours down'),
      numbers('Lost builds'),
      numbers('Hours of maintenance'),
    ],
    trouble.equipment.map((group) => [
      group.group,
      String(group.count),
      cells.estimate(group.breakdownsPerWeek, PLAIN),
      cells.estimate(group.hoursDownPerWeek, PLAIN),
      cells.estimate(group.failedBuildsPerWeek, PLAIN),
      cells.estimate(group.hoursOfMaintenancePerWeek, PLAIN),
    ]),
  );
}

/** What goes wrong with parts and jobs. */
export function partTroubleGrid({ trouble }: Results): Grid[] {
  const cells = new Cells();
  return cells.grid(
    'Parts and jobs: an average week, with intervals',
    [
      { title: 'Part' },
      numbers('Parts made again'),
      numbers('Jobs cancelled'),
      { title: 'Jobs that waited longer for a stage than they should' },
    ],
    trouble.parts.map((part) => [
      part.part,
      cells.estimate(part.repeatedPartsPerWeek, PLAIN),
      cells.estimate(part.cancelledJobsPerWeek, PLAIN),
      part.waitedTooLong
        .map(({ stage, jobsPerWeek }) => {
          const found = cells.estimate(jobsPerWeek, PLAIN);
          return `${stage}: ${typeof found === 'string' ? found : `${found.value} (${found.range})`}`;
        })
        .join('; ') || 'none',
    ]),
  );
}

/** What is made outside. */
export function sentOutGrid({ sentOut }: Results): Grid[] {
  const cells = new Cells();
  return cells.grid(
    'Work sent out: shares of jobs, and what comes back in an average week, with intervals',
    [
      { title: 'Part' },
      numbers('Jobs sent out, %'),
      numbers('Jobs back, a week'),
      numbers('Parts back, a week'),
    ],
    sentOut.map(({ part, share, jobsPerWeek, partsPerWeek }) => [
      part ?? 'All jobs',
      cells.estimate(share, PERCENT),
      cells.estimate(jobsPerWeek, PLAIN),
      cells.estimate(partsPerWeek, PLAIN),
    ]),
  );
}

/** Builds that were packed from the shapes of their parts. */
export function buildsGrid({ builds }: Results): Grid[] {
  const cells = new Cells();
  return cells.grid(
    'Builds of each machine group, averages with intervals',
    [
      { title: 'Machines' },
      numbers('Parts in a build'),
      numbers('Fill, %'),
      numbers('Height, mm'),
      numbers('Most height, mm'),
      numbers('Share of the part cake that is part, %'),
    ],
    builds.map((one) => [
      one.group,
      cells.estimate(one.partsPerBuild, PLAIN),
      cells.estimate(one.meanFill, PERCENT),
      cells.estimate(one.meanHeight, MILLIMETRES),
      String(one.mostHeight),
      one.kind === 'platform' ? '' : cells.estimate(one.packingDensity, PERCENT),
    ]),
  );
}

const KILOGRAMS: typeof HOURS = { size: 1, one: 'kg', many: 'kg', leastDecimals: 1 };

/** What powder builds take and give back. */
export function powderGrid({ builds }: Results): Grid[] {
  const cells = new Cells();
  return cells.grid(
    'Powder, kg a week, averages with intervals',
    [
      { title: 'Machines' },
      numbers('Virgin, into builds'),
      numbers('Used, into builds'),
      numbers('Comes back as used'),
      numbers('Has become parts'),
      numbers('Surplus of used'),
    ],
    builds.flatMap(({ group, powder }) =>
      powder === null
        ? []
        : [
            [
              group,
              ...[powder.virgin, powder.used, powder.returned, powder.inParts, powder.surplus].map((one) =>
                cells.estimate(one, KILOGRAMS),
              ),
            ],
          ],
    ),
  );
}
