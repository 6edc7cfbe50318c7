import { keptTogether } from '@buildweek/charts';
import { formatNumber, type HeldAgainst, type HeldPart, type ReplayAnswer } from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

const HOURS_PER_DAY = 24;
const PERCENT = 100;

/** How the model stands against what happened, on one screen. */
export function replayText(answer: ReplayAnswer, style: Style): string {
  const { verdict, log, judged, run, warnings } = answer;
  const played = `${log.jobs} jobs of ${log.name} (${log.from} to ${log.until}) were played ${run.replications} times from ${run.playedFrom}, seed “${run.seed}”${run.loggedDurations.length === 0 ? '' : `, with the durations of the log for ${run.loggedDurations.join(', ')}`}. Judged: ${judged.weeks} weeks from ${judged.from} with ${judged.jobs} jobs${judged.learnedUntil === null ? '' : `; the scenario was learned up to ${judged.learnedUntil}`}. Lead times are by the clock; a job that is not finished in the judged weeks counts up to their end, in the log as in the play.`;
  const all = [
    verdict.map((sentence) => paragraph(harmless(keptTogether(sentence)), '')).join('\n\n'),
    section(
      'Part by part: what happened beside what is expected, with the band of the check',
      partsTable(answer, style),
      style,
    ),
    ...(answer.stages.length === 0
      ? []
      : [section('Where jobs are: average hours by the clock', stagesTable(answer, style), style)]),
    listSection('Not played, or not judged', log.leftOut.map(leftOutWords), style),
    paragraph(played, ''),
    listSection('Warnings', warnings, style),
  ];
  return `${all.filter((text) => text !== '').join('\n\n')}\n`;
}

function partsTable({ parts }: ReplayAnswer, style: Style): string {
  return tableText(
    [
      words('part'),
      numbers('jobs'),
      numbers('days on average'),
      numbers('expected'),
      numbers('nine of ten within, days'),
      numbers('expected'),
      numbers('on time, %'),
      numbers('expected'),
      words('the model says'),
    ],
    parts.map((part) => ({
      cells: [
        part.part,
        String(part.jobs),
        ...besideCells(part.leadTime, 1 / HOURS_PER_DAY, 1),
        ...besideCells(part.p90, 1 / HOURS_PER_DAY, 1),
        ...besideCells(part.onTime, PERCENT, 0),
        OUTCOME_WORDS[part.outcome],
      ],
    })),
    style,
  );
}

const OUTCOME_WORDS: Readonly<Record<HeldPart['outcome'], string>> = {
  'as modelled': 'as modelled',
  slower: 'slower than modelled',
  faster: 'faster than modelled',
  otherwise: 'otherwise spread',
};

/** What happened; and the average of the replications with the band. */
function besideCells(one: HeldAgainst | null, factor: number, decimals: number): string[] {
  if (one === null) return ['–', '–'];
  const [observed, expected, low, high] = [one.observed, one.expected, one.low, one.high].map((value) =>
    formatNumber(value * factor, decimals),
  );
  return [observed ?? '', `${expected} (${low} to ${high})`];
}

function stagesTable({ stages }: ReplayAnswer, style: Style): string {
  return tableText(
    [
      words('part'),
      words('stage'),
      words('time'),
      numbers('jobs'),
      numbers('in the log'),
      numbers('in the model'),
      words(''),
    ],
    stages.map(({ part, stage, what, jobs, observed, expected, usualLow, usualHigh, standsOut }) => ({
      cells: [
        part,
        stage,
        what,
        String(jobs),
        hours(observed),
        `${hours(expected)} (${hours(usualLow)} to ${hours(usualHigh)})`,
        standsOut ? 'stands out' : '',
      ],
    })),
    style,
  );
}

/** Work is a matter of minutes. */
function hours(value: number): string {
  return formatNumber(value, Math.abs(value) < 1 ? 2 : 1);
}

function leftOutWords({ jobs, why, what, rows }: ReplayAnswer['log']['leftOut'][number]): string {
  const more = jobs > rows.length ? ' …' : '';
  return `${jobs} ${jobs === 1 ? 'job' : 'jobs'}, ${why}. ${what} Rows: ${rows.join(', ')}${more}.`;
}
