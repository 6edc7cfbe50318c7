import { formatEstimate, formatLevel, PERCENT } from '@buildweek/charts';
import type { AwayAnswer, AwayGroup, Beside } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

const PLAIN = { size: 1, one: '', many: '', leastDecimals: 1 };
const POINTS = { ...PERCENT, one: '', many: '' };

function besideCells({ there, away, difference }: Beside): Content[] {
  return [there, away, difference].map((one) =>
    one.kind === 'estimate' ? formatEstimate(one, POINTS) : html`<span class="none">${one.reason}</span>`,
  );
}

/** In words: "4 weeks (2 to 7)". */
function recoveryCell({ recovery: { weeks, low, high } }: AwayGroup, weeksAfter: number): string {
  if (weeks === null) return `more than ${weeksAfter} weeks`;
  return `${weeks} ${weeks === 1 ? 'week' : 'weeks'} (${low ?? 0} to ${high ?? `more than ${weeksAfter}`})`;
}

/** The groups one after the other, with their curves. */
export function groupsSection(answer: AwayAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  return html`
<section id="weeks" aria-labelledby="weeks-title">
<h2 id="weeks-title">Week by week</h2>
${answer.groups.map((_, index) => figure(charts, `away-${index + 1}`))}
</section>`;
}

/** What it costs in promises, and how long recovery takes. */
export function promisesSection(answer: AwayAnswer): Html {
  const { groups, run, fromWeek, awayWeeks, differencesLevel } = answer;
  const after = run.weeks - fromWeek + 1 - awayWeeks;
  const spans = ['before', 'during', 'after'] as const;
  return html`
<section id="promises" aria-labelledby="promises-title">
<h2 id="promises-title">Promises, and the way back</h2>
<p class="lede">Back to normal: ${answer.normalBand}. Recovery is counted from the return.</p>
${table(
  'recovery-table',
  'Weeks until jobs in the lab are back to normal, by the average and by its interval',
  [
    { title: 'One away of' },
    { title: 'People', numeric: true },
    { title: 'Recovery', numeric: true },
    { title: 'More jobs in the lab, worst week', numeric: true },
  ],
  groups.map((group) => [
    nameText(group.group),
    group.count,
    recoveryCell(group, after),
    group.mostExtraJobs.kind === 'estimate'
      ? formatEstimate(group.mostExtraJobs, PLAIN)
      : html`<span class="none">${group.mostExtraJobs.reason}</span>`,
  ]),
)}
${
  groups.some(({ onTime }) => onTime !== null)
    ? table(
        'promises-table',
        `On time, %, by the weeks in which jobs come; differences with intervals of ${formatLevel(differencesLevel)} each`,
        [
          { title: 'One away of' },
          { title: 'Jobs that come' },
          { title: 'Everybody there', numeric: true },
          { title: 'One away', numeric: true },
          { title: 'Difference', numeric: true },
        ],
        groups.flatMap(({ group, onTime }) =>
          onTime === null ? [] : spans.map((span) => [nameText(group), span, ...besideCells(onTime[span])]),
        ),
        true,
      )
    : null
}
</section>`;
}
