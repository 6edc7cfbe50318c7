import { shareInWords, stepName, WAIT_CAUSE_PARTS } from '@buildweek/charts';
import type { Band, Results } from '@buildweek/results';
import { className } from '../content/lead-time-part.ts';
import { type FigureName, type FigureRow, figureRow, knownRow } from './figure-row.ts';

/** Targets: what is asked, what was found, in how many periods. */
export function targetRows({ targets }: Results): FigureRow[] {
  return targets.flatMap(({ wording, meaning, currency, asked, found, periods, verdict, confidence }) => {
    const unit = currency ?? 'share';
    const of = (measure: string, note = ''): FigureName => ({
      section: 'Targets',
      subject: wording,
      measure,
      unit,
      note,
    });
    const share = (measure: string): FigureName => ({ ...of(measure), unit: 'share' });
    return [
      knownRow(of('asked for', meaning), asked),
      found.kind === 'known'
        ? knownRow(of('found', verdict), found.value)
        : figureRow(of('found', verdict), found),
      ...(periods === null
        ? []
        : [
            knownRow(share('share of periods asked for'), periods.asked),
            figureRow(share('share of periods that meet it'), periods.found),
          ]),
      ...(confidence === null
        ? []
        : [
            knownRow(share('one-sided confidence for met'), confidence.met),
            knownRow(share('one-sided confidence for missed'), confidence.missed),
          ]),
    ];
  });
}

/** Lead times and promises of every class of jobs. */
export function leadTimeRows({ jobs }: Results): FigureRow[] {
  return jobs.flatMap((one) => {
    const of = (measure: string, unit: string): FigureName => ({
      section: 'How long jobs take',
      subject: className(one),
      measure,
      unit,
    });
    return [
      knownRow(of('jobs played', 'jobs'), one.jobs),
      knownRow(of('jobs not finished at the end', 'jobs'), one.unfinished),
      figureRow(of('mean lead time', 'hours'), one.meanLeadTime),
      figureRow(of('standard deviation of the lead time', 'hours'), one.standardDeviationOfLeadTime),
      ...one.percentiles.flatMap(({ share, longRun, onePeriod }) => {
        const within = of(`${shareInWords(share).toLowerCase()} jobs finished within`, 'hours');
        return [figureRow(within, longRun), figureRow(within, onePeriod)];
      }),
      figureRow(of('promises kept', 'share'), one.onTime),
      figureRow(of('promises kept', 'share'), one.onTimeOnePeriod),
    ];
  });
}

/** Every step of every part type. */
export function hoursRows({ hours }: Results): FigureRow[] {
  return hours.flatMap(({ part, steps }) =>
    steps.flatMap((step) => {
      const of = (measure: string): FigureName => ({
        section: 'Where the hours go',
        subject: `${part} / ${stepName(step)}`,
        measure,
        unit: 'hours per job',
      });
      return [
        figureRow(of(step.attended ? 'work, attended' : 'work, by itself'), step.work),
        ...step.waits.map(({ cause, hours: wait }) => figureRow(of(WAIT_CAUSE_PARTS[cause].label), wait)),
      ];
    }),
  );
}

/** A curve as one row for each of its points. */
export function bandRows(
  { value, low, high, level, replications }: Band,
  nameAt: (at: number) => FigureName,
): FigureRow[] {
  return value.map((one, at) =>
    figureRow(nameAt(at), {
      kind: 'estimate',
      value: one,
      low: low[at] ?? one,
      high: high[at] ?? one,
      level,
      replications,
    }),
  );
}

/** Week by week: what comes in, what is finished, what is in the lab. */
export function weekRows({ flow }: Results): FigureRow[] {
  const curves = [
    ['jobs that come in', 'jobs', flow.arrivedJobs],
    ['jobs finished', 'jobs', flow.finishedJobs],
    ['parts finished', 'parts', flow.finishedParts],
    ['jobs in the lab', 'jobs at a time', flow.jobsInLab],
  ] as const;
  return curves.flatMap(([measure, unit, band]) =>
    bandRows(band, (at) => ({ section: 'Week by week', subject: `week ${at + 1}`, measure, unit })),
  );
}
