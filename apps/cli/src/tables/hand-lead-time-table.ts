import { formatEstimate, formatPlain, HOURS, unnamed } from '@buildweek/charts';
import { differenceSentences, type HandEstimate, type HandLeadTime, type JobClass } from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';

const BASIS =
  'Hours of an average job, from formulas of waiting: stages by their means, trouble (breakdowns, builds in vain), the wait for a batch to fill, queues for equipment and people by Sakasegawa. A rough figure to hold against the simulation. It knows no shifts (a wait for people counts hours in which somebody is on duty), no carriers, no changes of material, no absence and no rush.';

/**
 * Lead times by hand with what they are made of, and beside them what was simulated; below, why the two differ where
 * they do by more than a factor of two.
 *
 * @param jobs null when nothing was played
 */
export function handLeadTimeTable(
  leadTimes: readonly HandLeadTime[],
  jobs: readonly JobClass[] | null,
  style: Style,
): string {
  if (leadTimes.length === 0) return '';
  const footnotes = new Footnotes();
  const columns = [
    words('jobs'),
    numbers('by hand, h'),
    ...(jobs === null ? [] : [numbers('simulated, h')]),
    numbers('stages'),
    numbers('trouble'),
    numbers('requester'),
    numbers('batch'),
    numbers('equipment'),
    numbers('people'),
  ];
  const rows = leadTimes.map(({ part, estimate }) => ({
    cells: [
      part ?? 'all jobs',
      estimate.kind === 'refused' ? footnotes.mark(estimate.reason) : formatPlain(estimate.leadTimeHours),
      ...(jobs === null ? [] : [simulatedCell(jobs, part, footnotes)]),
      ...partsOf(estimate),
    ],
  }));
  return [
    tableText(columns, rows, style),
    footnotes.text(),
    paragraph(BASIS, '  '),
    ...differenceSentences(leadTimes).map((sentence) => paragraph(sentence, '  - ')),
  ]
    .filter((text) => text !== '')
    .join('\n');
}

function simulatedCell(jobs: readonly JobClass[], part: string | null, footnotes: Footnotes): string {
  const mean = jobs.find((one) => one.part === part && one.priority === 'all')?.meanLeadTime;
  if (mean === undefined) return '';
  return mean.kind === 'estimate' ? formatEstimate(mean, unnamed(HOURS)) : footnotes.mark(mean.reason);
}

function partsOf(estimate: HandEstimate): string[] {
  if (estimate.kind === 'refused') return ['', '', '', '', '', ''];
  const { stageHours, troubleHours, requesterHours, batchHours, equipmentHours, peopleHours } = estimate;
  return [stageHours, troubleHours, requesterHours, batchHours, equipmentHours, peopleHours].map(formatPlain);
}
