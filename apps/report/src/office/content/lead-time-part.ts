import { formatCount, JOBS, leadTimeUnit, PARTS, PERCENT, shareInWords } from '@buildweek/charts';
import { type JobClass, lastingGrowth, meanOfBand, periodName, type Results } from '@buildweek/results';
import type { Cell, Grid } from './block.ts';
import { Cells, numbers } from './cells.ts';

const SHARE = 0.9;

/** "All jobs", "rush jobs", or the part type and its priority. */
export function className({ part, priority }: JobClass): string {
  if (part === null) return priority === 'all' ? 'All jobs' : `All ${priority} jobs`;
  return priority === 'all' ? part : `${part}, ${priority}`;
}

/** The few numbers that a meeting asks for, in the long run and for one period. */
export function keyNumbersGrid(results: Results): Grid[] {
  const cells = new Cells();
  const unit = leadTimeUnit(results);
  const period = `one ${periodName(results.run.weeks)}`;
  const classes = results.jobs.filter((one) => one.part === null && one.jobs > 0);
  const shown = classes.some(({ priority }) => priority === 'rush') ? classes : classes.slice(0, 1);
  const { flow } = results;
  const rows: Cell[][] = [
    ...shown.flatMap((one) =>
      one.percentiles
        .filter(({ share }) => share === SHARE)
        .map(({ longRun, onePeriod }): Cell[] => [
          `${className(one)}: ${shareInWords(SHARE).toLowerCase()} finished within`,
          cells.estimate(longRun, unit, true),
          cells.prediction(onePeriod, unit, true),
        ]),
    ),
    ...shown
      .filter(({ onTime }) => onTime.kind === 'estimate')
      .map((one): Cell[] => [
        `${className(one)}: promises kept`,
        cells.estimate(one.onTime, PERCENT, true),
        cells.prediction(one.onTimeOnePeriod, PERCENT, true),
      ]),
    ['Jobs finished a week', cells.estimate(meanOfBand(flow.finishedJobs), JOBS, true), '–'],
    ['Parts finished a week', cells.estimate(meanOfBand(flow.finishedParts), PARTS, true), '–'],
    ['Jobs in the lab at a time', cells.estimate(meanOfBand(flow.jobsInLab), JOBS, true), '–'],
  ];
  const grows = lastingGrowth(flow.jobsInLab) !== null;
  return cells.grid(
    grows
      ? `Key numbers: the average of exactly these weeks with its interval, and what ${period} may bring. The jobs in the lab grow, so that later weeks are worse. A day is 24 hours by the clock.`
      : `Key numbers: the average, with its interval, if ${period} like this came again and again, and what ${period} may bring. A day is 24 hours by the clock.`,
    [{ title: 'What' }, numbers(grows ? 'In these weeks' : 'In the long run'), numbers(`In ${period}`)],
    rows,
  );
}

/** How long jobs take, by part type and priority. */
export function leadTimeGrid(results: Results): Grid[] {
  const cells = new Cells();
  const unit = leadTimeUnit(results);
  const period = `one ${periodName(results.run.weeks)}`;
  const jobs = results.jobs.filter((one) => one.jobs > 0);
  const shares = [...new Set(jobs.flatMap((one) => one.percentiles.map(({ share }) => share)))].sort(
    (one, other) => one - other,
  );
  const unfinished = jobs.some((one) => one.unfinished > 0);
  const hasPeriod = shares.includes(SHARE);
  return cells.grid(
    `Lead times in ${unit.many} by the clock, with intervals`,
    [
      { title: 'Jobs' },
      numbers('Played'),
      ...(unfinished ? [numbers('Unfinished')] : []),
      numbers('Mean'),
      ...shares.map((share) => numbers(share === 0.5 ? 'Half' : shareInWords(share))),
      ...(hasPeriod ? [numbers(`Nine of ten, ${period}`)] : []),
      numbers('Promises kept, %'),
      numbers(`Promises kept, ${period}, %`),
    ],
    jobs.map((one) => {
      const at = (share: number) => one.percentiles.find((candidate) => candidate.share === share);
      return [
        className(one),
        formatCount(one.jobs),
        ...(unfinished ? [formatCount(one.unfinished)] : []),
        cells.estimate(one.meanLeadTime, unit),
        ...shares.map((share) => cells.estimate(at(share)?.longRun, unit)),
        ...(hasPeriod ? [cells.prediction(at(SHARE)?.onePeriod, unit)] : []),
        cells.estimate(one.onTime, PERCENT),
        cells.prediction(one.onTimeOnePeriod, PERCENT),
      ];
    }),
  );
}
