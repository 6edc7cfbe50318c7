import type { ReportDocument, Results } from '@buildweek/results';
import { isDecision, shownResults } from '../document.ts';
import { type FigureName, type FigureRow, knownRow } from './figure-row.ts';

/** What arithmetic says of the same lab. */
export function handRows({ handCalculation, handLeadTimes }: Results): FigureRow[] {
  const of = (subject: string, measure: string, unit: string, note = ''): FigureName => ({
    section: 'The same by hand',
    subject,
    measure,
    unit,
    note,
  });
  return [
    ...handCalculation.flatMap((hand) => [
      knownRow(of(hand.name, 'asked for', 'hours per week', hand.note), hand.demandHoursPerWeek),
      knownRow(of(hand.name, 'available', 'hours per week'), hand.availableHoursPerWeek),
      knownRow(of(hand.name, 'load', 'share'), hand.load),
    ]),
    ...handLeadTimes.flatMap(({ part, estimate }) => {
      if (estimate.kind === 'refused') return [];
      const subject = part ?? 'all jobs';
      return [
        knownRow(of(subject, 'lead time', 'hours'), estimate.leadTimeHours),
        knownRow(of(subject, 'of it stages', 'hours'), estimate.stageHours),
        knownRow(of(subject, 'of it trouble', 'hours'), estimate.troubleHours),
        knownRow(of(subject, 'of it requester', 'hours'), estimate.requesterHours),
        knownRow(of(subject, 'of it batch', 'hours'), estimate.batchHours),
        knownRow(of(subject, 'of it machines and stations', 'hours'), estimate.equipmentHours),
        knownRow(of(subject, 'of it people', 'hours'), estimate.peopleHours),
      ];
    }),
  ];
}

/** How it was computed. */
export function originRows(document: ReportDocument): FigureRow[] {
  const { run } = isDecision(document) ? shownResults(document) : document;
  const of = (measure: string, unit: string, note = ''): FigureName => ({
    section: 'How this was computed',
    subject: `seed “${run.seed}”`,
    measure,
    unit,
    note,
  });
  return [
    knownRow(of('replications', 'number', run.stopped), run.replications),
    knownRow(of('most replications', 'number'), run.replicationLimit),
    knownRow(of('measured weeks', 'weeks'), run.weeks),
    knownRow(
      of('ignored weeks', 'weeks', `${run.ignoredWeeks.method}. ${run.ignoredWeeks.note}`),
      run.ignoredWeeks.weeks,
    ),
    knownRow(of('weeks to finish in', 'weeks'), run.capWeeks),
    knownRow(of('confidence level', 'share'), run.level),
  ];
}
