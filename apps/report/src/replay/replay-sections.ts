import { formatPlain, PERCENT, replayUnit, type Unit } from '@buildweek/charts';
import {
  formatNumber,
  type HeldAgainst,
  type HeldPart,
  type HeldStage,
  type ReplayAnswer,
} from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

type Charts = ReadonlyMap<string, DrawnChart>;

const OUTCOMES: Readonly<Record<HeldPart['outcome'], string>> = {
  'as modelled': 'as modelled',
  slower: 'slower than modelled',
  faster: 'faster than modelled',
  otherwise: 'otherwise spread',
};

/** What happened, and what was expected with the band; in two cells. */
function besideCells(one: HeldAgainst | null, unit: Unit): Content[] {
  if (one === null) return ['–', '–'];
  const text = (value: number): string => formatNumber(value / unit.size, unit.leastDecimals);
  return [
    text(one.observed),
    html`${text(one.expected)} <span class="interval">${text(one.low)} to ${text(one.high)}</span>`,
  ];
}

/** Week by week, all parts together. */
export function weeksSection(charts: Charts): Html {
  return html`
<section id="weeks" aria-labelledby="weeks-title">
<h2 id="weeks-title">Week by week</h2>
${figure(charts, 'replay-weeks')}
</section>`;
}

/** How long jobs took. */
export function leadTimesSection(answer: ReplayAnswer, charts: Charts): Html {
  const unit = replayUnit(answer);
  return html`
<section id="lead-times" aria-labelledby="lead-times-title">
<h2 id="lead-times-title">How long jobs took</h2>
${figure(charts, 'replay-lead-times')}
${table(
  'lead-times-table',
  `Lead times, ${unit.many} by the clock, and the share on time: what happened beside what the model expects, with the band of the check`,
  [{ title: 'Of the jobs' }, { title: 'What happened', numeric: true }, { title: 'Expected', numeric: true }],
  [
    ...answer.leadTimes.map((one) => [
      `${formatPlain(100 * one.share)} % took at most`,
      ...besideCells(one, unit),
    ]),
    ...(answer.onTime === null ? [] : [['on time, %', ...besideCells(answer.onTime, PERCENT)]]),
  ],
)}
</section>`;
}

/** Part by part: averages first, then the weeks of those that differ; the others stand folded. */
export function partsSection(answer: ReplayAnswer, charts: Charts): Html {
  const unit = replayUnit(answer);
  return html`
<section id="parts" aria-labelledby="parts-title">
<h2 id="parts-title">Part by part</h2>
${figure(charts, 'replay-parts')}
${table(
  'parts-table',
  `What happened beside what is expected, with the band of the check: lead times in ${unit.many} by the clock, jobs on time in %`,
  [
    { title: 'Part' },
    { title: 'Jobs', numeric: true },
    { title: 'Average', numeric: true },
    { title: 'Expected', numeric: true },
    { title: 'Nine of ten within', numeric: true },
    { title: 'Expected', numeric: true },
    { title: 'On time', numeric: true },
    { title: 'Expected', numeric: true },
    { title: 'Verdict' },
  ],
  answer.parts.map((part) => [
    nameText(part.part),
    part.jobs,
    ...besideCells(part.leadTime, unit),
    ...besideCells(part.p90, unit),
    ...besideCells(part.onTime, PERCENT),
    OUTCOMES[part.outcome],
  ]),
  true,
)}
<details><summary>Each part, week by week</summary>
${answer.parts.map((_, position) => figure(charts, `replay-part-${position + 1}`))}
</details>
</section>`;
}

/** Where jobs were, as far as the log knows. */
export function stagesSection({ stages }: ReplayAnswer): Html {
  if (stages.length === 0) return html``;
  const cell = (hours: number): string => formatNumber(hours, Math.abs(hours) < 1 ? 2 : 1);
  return html`
<section id="stages" aria-labelledby="stages-title">
<h2 id="stages-title">Where jobs were</h2>
<p class="lede">Average hours by the clock between the moments of the route that the log knows. This is no part of the
check: what a log calls the start of a stage is not always what the model calls so. It points to where a difference
comes from. Work that stands out lies further from the
replications than chance takes any of the averages of work in 19 of 20 uses. A wait below 0: parts go on to the next stage
before the whole job has left the one before.</p>
${table(
  'stages-table',
  'Hours by the clock; in nine of ten replications the average lies in the range in brackets',
  [
    { title: 'Part' },
    { title: 'Stage' },
    { title: 'Time' },
    { title: 'Jobs', numeric: true },
    { title: 'What happened', numeric: true },
    { title: 'Expected', numeric: true },
    { title: 'Difference' },
  ],
  stages.map((one: HeldStage) => [
    nameText(one.part),
    nameText(one.stage),
    one.what,
    one.jobs,
    cell(one.observed),
    html`${cell(one.expected)} <span class="interval">${cell(one.usualLow)} to ${cell(one.usualHigh)}</span>`,
    one.standsOut ? 'stands out' : '',
  ]),
  true,
)}
</section>`;
}

/** What the check looks at, and how sure it is. */
export function checkSection({ test, run, wouldSee }: ReplayAnswer): Html {
  return html`
<section id="check" aria-labelledby="check-title">
<h2 id="check-title">How the check is made</h2>
<p class="lede">The lab was played ${run.replications} times with the very jobs of the log. If the model is right, what
happened is one more such history: each of the ${run.replications + 1} is as likely as any other to be the most unusual.
A history is the more unusual, the nearer its numbers lie to the edge of all numbers at the same place, over everything
in this table at once. The model is called contradicted when what happened is among the most unusual
${formatPlain(100 * test.falseAlarmRate)} %; that is how often a model that is right is wronged, whatever number of
weeks and parts is looked at.</p>
${table(
  'check-table',
  `At least as unusual as what happened: ${formatPlain(100 * test.pValue)} % of the histories. What is looked at:`,
  [{ title: 'Numbers of' }, { title: 'How many', numeric: true }, { title: 'What happened' }],
  test.families.map(({ what, places, isLeft }) => [
    what,
    places,
    isLeft ? 'leaves the band' : 'stays within the band',
  ]),
)}
${wouldSeeTable(wouldSee)}
<p>A model that is not contradicted is not proven: small differences stay unseen in few weeks. And in very many weeks a
small difference that matters to nobody is seen too: look at how large it is.</p>
</section>`;
}

/** What the check is worth for this very log, where that was asked for. */
function wouldSeeTable(wouldSee: ReplayAnswer['wouldSee']): Html {
  const [first] = wouldSee;
  if (first === undefined) return html``;
  return table(
    'would-see-table',
    `What this check would see: of ${first.of} logs with the same jobs from a lab in which this takes ${formatPlain(100 * (first.factor - 1))} % longer, so many contradict the model (95 % interval of the share)`,
    [{ title: 'Longer than modelled' }, { title: 'Seen in', numeric: true }],
    wouldSee.map(({ what, seen, of, low, high }) => [
      nameText(what),
      html`${formatPlain((100 * seen) / of)} % <span class="interval">${formatPlain(100 * low)} to ${formatPlain(100 * high)}</span>`,
    ]),
  );
}

/** Rows of the log that were not played, or not judged. */
export function leftOutSection({ log }: ReplayAnswer): Html {
  if (log.leftOut.length === 0) return html``;
  return html`
<section id="left-out" aria-labelledby="left-out-title">
<h2 id="left-out-title">What of the log was left out</h2>
${table(
  'left-out-table',
  'Jobs that were not played, or not judged',
  [
    { title: 'Why' },
    { title: 'Jobs', numeric: true },
    { title: 'What to know' },
    { title: 'Rows of the log' },
  ],
  log.leftOut.map(({ why, jobs, what, rows }) => [
    why,
    jobs,
    nameText(what),
    `${rows.join(', ')}${jobs > rows.length ? ' …' : ''}`,
  ]),
)}
</section>`;
}
