import { formatEstimate, PERCENT, unnamed } from '@buildweek/charts';
import {
  type Moment,
  momentText,
  type PromiseAnswer,
  type PromisedDate,
  type PromisedRequest,
} from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';

const HOURS = { size: 1, one: '', many: '', leastDecimals: 1 };

/** Dates of a request by every way of making it, what moves them, and what they do to others. */
export function requestSections({ request }: PromiseAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (request === null) return html``;
  const reasons = new Reasons();
  return html`
<section id="request" aria-labelledby="request-title">
<h2 id="request-title">When it is ready</h2>
${figure(charts, 'ways')}
${waysTable(request, reasons)}
${reasons.list()}
${request.impossible.length === 0 ? null : html`<ul class="notes">${request.impossible.map(({ way, reason }) => html`<li>${nameText(way)}: <bdi>${reason}</bdi></li>`)}</ul>`}
${request.request.notes.length === 0 ? null : html`<ul class="notes">${request.request.notes.map((note) => html`<li><bdi>${note}</bdi></li>`)}</ul>`}
</section>
${movesSection(request)}
${
  request.effects.length === 0
    ? null
    : html`
<section id="effects" aria-labelledby="effects-title">
<h2 id="effects-title">What taking it on does to the jobs in the lab</h2>
${effectsTable('effects-table', request.effects)}
</section>`
}`;
}

/** A date, or a mark that says why there is none. */
export function dateCell(date: PromisedDate, moment: Moment | null, reasons: Reasons): Content {
  if (moment !== null) return momentText(moment.at);
  const number = reasons.numberOf(date.refused ?? 'The lab does not close any more.');
  return html`<span class="none">not given [${number}]</span>`;
}

function percentColumns(dates: readonly PromisedDate[]) {
  return dates.map(({ probability }) => ({ title: `${Math.round(100 * probability)} %`, numeric: true }));
}

function waysTable({ ways }: PromisedRequest, reasons: Reasons): Html {
  return table(
    'ways-table',
    'Ready by, and below it the closing time to promise, with so much confidence',
    [{ title: 'By' }, ...percentColumns(ways[0]?.dates ?? [])],
    ways.map(({ route, process, dates }) => [
      html`${nameText(route ?? 'sent out')}${process === null || process === 'other' ? null : ` (${process})`}`,
      ...dates.map(
        (date) =>
          html`${dateCell(date, date.ready, reasons)}<br><strong>${dateCell(date, date.promise, reasons)}</strong>`,
      ),
    ]),
  );
}

function movesSection({ moves, ways, chosen }: PromisedRequest): Html {
  if (moves.length === 0) return html``;
  const reasons = new Reasons();
  const asked = ways.find(({ route }) => route === chosen);
  const cells = (dates: readonly PromisedDate[]): Content[] =>
    dates.map((date) => dateCell(date, date.promise, reasons));
  return html`
<section id="moves" aria-labelledby="moves-title">
<h2 id="moves-title">What moves it</h2>
<p class="lede">By ${nameText(chosen)}, everything on the same random numbers.</p>
${table(
  'moves-table',
  'The closing time to promise, and by how many hours it is finished later in the mean',
  [{ title: 'Asked for' }, ...percentColumns(asked?.dates ?? []), { title: 'Hours later', numeric: true }],
  [
    ...(asked === undefined ? [] : [['as asked', ...cells(asked.dates), '']]),
    ...moves.map((move) => [move.what, ...cells(move.dates), estimateCell(move.hours, HOURS, { reasons })]),
  ],
)}
${reasons.list()}
</section>`;
}

/** Builds that were decided on, against the rules of the lab deciding alone. */
export function pinnedSection({ pinned }: PromiseAnswer): Html {
  if (pinned === null) return html``;
  return html`
<section id="decided" aria-labelledby="decided-title">
<h2 id="decided-title">What the decided builds do</h2>
<p class="lede">Against the rules of the lab deciding alone, on the same random numbers.</p>
${effectsTable('decided-table', pinned.effects)}
</section>`;
}

function effectsTable(id: string, effects: PromisedRequest['effects']): Html {
  const reasons = new Reasons();
  return html`${table(
    id,
    'Chance of being on time before and after, %, and by how many hours each ends later; those that lose most first',
    [
      { title: 'Job' },
      { title: 'What' },
      { title: 'Due' },
      { title: 'Before', numeric: true },
      { title: 'After', numeric: true },
      { title: 'Hours later', numeric: true },
    ],
    effects.map((effect) => [
      nameText(effect.job),
      html`${effect.quantity} × ${nameText(effect.part)}${effect.rush ? ', rush' : ''}`,
      effect.due === null ? '' : momentText(effect.due.at),
      effect.onTimeBefore === null ? '' : estimateCell(effect.onTimeBefore, unnamed(PERCENT), { reasons }),
      effect.onTimeAfter === null ? '' : estimateCell(effect.onTimeAfter, unnamed(PERCENT), { reasons }),
      effect.hoursLater.kind === 'estimate'
        ? formatEstimate(effect.hoursLater, HOURS)
        : estimateCell(effect.hoursLater, HOURS, { reasons }),
    ]),
    true,
  )}
${reasons.list()}`;
}
