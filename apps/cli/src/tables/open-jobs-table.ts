import {
  momentText,
  type OpenJob,
  type Overnight,
  type PlannedStart,
  type PromiseDay,
  timeOfDayText,
} from '@buildweek/results';
import { clockWords } from '@buildweek/study';
import { paragraph } from '../terminal/paragraph.ts';
import { section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';
import { Footnotes } from './footnotes.ts';
import { estimateText, withNotes } from './question-text.ts';

const PERCENT = { size: 0.01, leastDecimals: 0, isMoney: false };
const MIDDLE = 0.5;
const TOLD = 0.8;

/** The jobs that stand in the lab, one to a row, and why some may be late. */
export function openJobsSections(openJobs: readonly OpenJob[], style: Style): string[] {
  const footnotes = new Footnotes();
  const table = tableText(
    [
      words('job'),
      words('what'),
      words('stands at'),
      words('due'),
      numbers('on time, %'),
      words('expected, 50 %'),
      words('ready, 80 %'),
    ],
    openJobs.map((job) => ({
      cells: [
        job.job,
        `${job.quantity} × ${job.part}${job.rush ? ', rush' : ''}`,
        job.machine === null ? job.stage : `${job.stage}, in ${job.machine}`,
        job.due === null ? '' : momentText(job.due.at),
        job.onTime === null ? '' : estimateText(job.onTime, PERCENT, footnotes),
        readyText(job, MIDDLE, footnotes),
        readyText(job, TOLD, footnotes),
      ],
    })),
    style,
  );
  const reasons = openJobs.flatMap(({ job, risk, moved }) =>
    [...risk, ...moved].map((sentence) => paragraph(harmless(`${job}: ${sentence}`), '  - ')),
  );
  return [
    section('Jobs in the lab', withNotes(table, footnotes), style),
    reasons.length === 0 ? '' : section('Why they may be late, or have moved', reasons.join('\n'), style),
  ];
}

function readyText({ dates }: OpenJob, chance: number, footnotes: Footnotes): string {
  const date = dates.find(({ probability }) => probability === chance);
  if (date?.ready == null) return footnotes.mark(date?.refused ?? 'No date can be given.');
  return momentText(date.ready.at);
}

/** What to start before the lab closes, and what stands until it opens again. */
export function daySections({ starts, overnight, closes, opens }: PromiseDay, style: Style): string[] {
  const until = `${momentText(closes.at)}`;
  return [
    starts.length === 0
      ? ''
      : section(
          `To start, until the lab opens again on ${momentText(opens.at)} (it closes ${until})`,
          startsTable(starts, style),
          style,
        ),
    section(`When the lab opens on ${momentText(opens.at)}`, overnightTable(overnight, style), style),
  ];
}

function startsTable(starts: readonly PlannedStart[], style: Style): string {
  return tableText(
    [
      words('machine'),
      words('jobs'),
      words('usually'),
      words('start by'),
      words('who'),
      numbers('of plays, %'),
    ],
    starts.map(({ machine, jobs, start, startBy, by, share }) => ({
      cells: [
        machine,
        jobs.map(({ job, part, pieces }) => `${job}: ${pieces} × ${part}`).join('; '),
        momentText(start.at),
        startBy.at.slice(0, 10) === start.at.slice(0, 10)
          ? timeOfDayText(startBy.at)
          : momentText(startBy.at),
        by.join(' and '),
        String(Math.round(100 * share)),
      ],
    })),
    style,
  );
}

function overnightTable(overnight: readonly Overnight[], style: Style): string {
  return tableText(
    [
      words('machine'),
      words('it'),
      words('since'),
      words('holds'),
      numbers('of closed hours without print'),
      numbers('of plays, %'),
    ],
    overnight.map(({ machine, state, since, jobs, standsHours, share }) => ({
      cells: [
        machine,
        state,
        since === null ? '' : momentText(since.at),
        jobs.join(', '),
        clockWords(standsHours),
        String(Math.round(100 * share)),
      ],
    })),
    style,
  );
}
