import { familyName, formatCount, formatLevel, formatPlain, formatShare } from '@buildweek/charts';
import type { LearnedAnswer, LearnedDuration, ReadTable } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html } from '../html.ts';
import { table } from '../table.ts';

/** Row numbers that are shown of each trouble. */
const MOST_ROWS = 12;

/** What of the log stands in the scenario, value by value. */
export function valuesSection({ values, left, level, learnedUntil }: LearnedAnswer): Html {
  return html`
<section id="values" aria-labelledby="values-title">
<h2 id="values-title">What was learned</h2>
<p class="lede">In the words in which it stands in the scenario; learned from the log up to ${learnedUntil}. Intervals
hold with ${formatLevel(level)} confidence. What stands behind “or” fits about as well and can be played instead.</p>
${table(
  'values-table',
  'Values of the scenario that come from the log',
  [{ title: 'of' }, { title: 'what' }, { title: 'learned, and from what' }],
  values.map(({ of, what, value, source, others }) => [
    html`<bdi>${of}</bdi>`,
    html`<bdi>${what}</bdi>`,
    html`<bdi>${value}</bdi>${others.map((other) => html`<br>or <bdi>${other}</bdi>`)}<br><small><bdi>${source}</bdi></small>`,
  ]),
)}
${left.length === 0 ? null : html`<h3>Not taken over</h3><ul class="notes">${left.map((one) => html`<li><bdi>${one}</bdi></li>`)}</ul>`}
</section>`;
}

/** How requests come in: by week, by hour, and what tests say of it. */
export function arrivalsSection({ tests }: LearnedAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  return html`
<section id="arrivals" aria-labelledby="arrivals-title">
<h2 id="arrivals-title">How jobs are asked for</h2>
${figure(charts, 'weekly-counts')}
${figure(charts, 'arrivals-by-hour')}
${
  tests.length === 0
    ? null
    : table(
        'tests-table',
        'What tests say of it',
        [{ title: 'test' }, { title: 'p', numeric: true }, { title: 'finding' }],
        tests.map(({ name, pValue, finding }) => [
          html`<bdi>${name}</bdi>`,
          pValue < 0.001 ? 'below 0.001' : formatPlain(pValue),
          html`<bdi>${finding}</bdi>`,
        ]),
      )
}
</section>`;
}

/** Times of work and of prints, with the families that were fitted. */
export function durationsSection(
  { durations }: LearnedAnswer,
  charts: ReadonlyMap<string, DrawnChart>,
): Html {
  const intro =
    'Only where the log, or a machine itself, has start and end of the work is anything fitted: between two clicks there is waiting. Work that went on when the log ended counts as longer than it had been.';
  return html`
<section id="durations" aria-labelledby="durations-title">
<h2 id="durations-title">How long work takes</h2>
<p class="lede">${intro}</p>
${durations.length === 0 ? html`<p>The log has no start and end of work.</p>` : null}
${figure(charts, 'fitted-durations')}
${durations.length === 0 ? null : durationTable(durations)}
</section>`;
}

function durationTable(durations: readonly LearnedDuration[]): Html {
  const rows = durations.flatMap((duration) => {
    const { of, stage, unit, per, seen, censored, families, warning } = duration;
    const name = html`<bdi>${of}</bdi>, <bdi>${stage}</bdi>`;
    const counted = `${formatCount(seen)}${censored === 0 ? '' : ` and ${formatCount(censored)} longer`}`;
    if (families.length === 0) {
      return [[name, counted, html`<bdi>${warning ?? 'not fitted'}</bdi>`, '', '', '']];
    }
    return families.map((family, index) => [
      index === 0 ? name : '',
      index === 0 ? counted : '',
      `${familyName(family.name)}${family.isAboutAsGood ? (index === 0 ? ', the best' : ', about as good') : ''}`,
      `${formatPlain(family.mean.value)} (${formatPlain(family.mean.low)} to ${formatPlain(family.mean.high)}) ${unit}`,
      `${formatPlain(family.p95)} ${unit} per ${per}`,
      family.aic.toFixed(1),
    ]);
  });
  return table(
    'durations-table',
    'Families by Akaike’s criterion, the smallest first',
    [
      { title: 'of' },
      { title: 'measured', numeric: true },
      { title: 'family' },
      { title: 'mean', numeric: true },
      { title: '95 of 100 below', numeric: true },
      { title: 'AIC', numeric: true },
    ],
    rows,
  );
}

/** Failed builds and breakdowns, with exact intervals; also of none. */
export function ratesSection(
  { failures, breakdowns, level }: LearnedAnswer,
  charts: ReadonlyMap<string, DrawnChart>,
): Html {
  if (failures.length === 0 && breakdowns.length === 0) return html``;
  const every = (rate: number): string => (rate === 0 ? 'never' : `every ${formatPlain(1 / rate)} h`);
  return html`
<section id="rates" aria-labelledby="rates-title">
<h2 id="rates-title">Builds that fail, machines that break down</h2>
${figure(charts, 'failed-builds')}
${table(
  'failures-table',
  `Failed builds; exact ${formatLevel(level)} intervals`,
  [
    { title: 'machines' },
    { title: 'failed', numeric: true },
    { title: 'runs', numeric: true },
    { title: 'share', numeric: true },
  ],
  failures.map(({ of, counted, among, estimate }) => [
    html`<bdi>${of}</bdi>`,
    formatCount(counted),
    formatCount(among),
    `${formatShare(estimate.value)} (${formatShare(estimate.low)} to ${formatShare(estimate.high)})`,
  ]),
)}
${table(
  'breakdowns-table',
  `Breakdowns in the hours of printing; exact ${formatLevel(level)} intervals`,
  [
    { title: 'machines' },
    { title: 'breakdowns', numeric: true },
    { title: 'hours', numeric: true },
    { title: 'one', numeric: true },
    { title: 'between', numeric: true },
  ],
  breakdowns.map(({ of, counted, among, estimate }) => [
    html`<bdi>${of}</bdi>`,
    formatCount(counted),
    formatCount(Math.round(among)),
    every(estimate.value),
    `${every(estimate.high)} and ${every(estimate.low)}`,
  ]),
)}
</section>`;
}

/** What was read, what it was taken for, and the rows that needed care. */
export function readingSection({ reading }: LearnedAnswer): Html {
  return html`
<section id="reading" aria-labelledby="reading-title">
<h2 id="reading-title">What was read</h2>
${readTable(reading.requests, 'requests', 'jobs')}
${reading.machines === null ? null : readTable(reading.machines, 'machines', 'runs')}
</section>`;
}

function readTable(read: ReadTable, id: string, what: string): Html {
  const { file, rows, kept, writing, notes, unused, columns, troubles } = read;
  const leftOut = unused.length === 0 ? [] : [`Not used: ${unused.map((one) => `“${one}”`).join(', ')}.`];
  return html`
<h3><bdi>${file}</bdi>: ${formatCount(kept)} ${what} of ${formatCount(rows)} rows</h3>
<ul class="notes">${[writing, ...notes, ...leftOut].map((one) => html`<li><bdi>${one}</bdi></li>`)}</ul>
${table(
  `${id}-columns`,
  'What the columns were taken for',
  [{ title: 'what' }, { title: 'column' }, { title: 'how known' }],
  columns.map(({ what: of, headings, how }) => [
    html`<bdi>${of}</bdi>`,
    html`<bdi>${headings.map((heading) => `“${heading}”`).join(' to ')}</bdi>`,
    how,
  ]),
)}
${
  troubles.length === 0
    ? html`<p>No row needed care.</p>`
    : table(
        `${id}-troubles`,
        'Rows that needed care',
        [{ title: 'what' }, { title: 'rows', numeric: true }, { title: 'what was done' }, { title: 'which' }],
        troubles.map(({ trouble, done, count, rows: which }) => [
          trouble,
          formatCount(count),
          done,
          `${which.slice(0, MOST_ROWS).join(', ')}${count > MOST_ROWS ? ', …' : ''}`,
        ]),
      )
}`;
}
