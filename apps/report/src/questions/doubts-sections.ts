import { formatLevel, formatShare, PERCENT } from '@buildweek/charts';
import { type DoubtEnd, type DoubtsAnswer, type WrittenUnit, writtenUnit } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { cell } from '../plans/plan-cells.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';

const OUTCOMES: Readonly<Record<DoubtEnd['outcome'], string>> = {
  differs: '',
  'no difference': 'the same in every replication',
  'not told apart': 'not told from chance',
  'not compared': '',
};

/** What each doubt does by itself. */
export function effectsSection(answer: DoubtsAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  const { measure, doubts } = answer;
  const reasons = new Reasons();
  const values = doubts.flatMap(({ low, high }) =>
    [low.value, high.value].flatMap((value) => (value.kind === 'estimate' ? [value.value] : [])),
  );
  const unit = writtenUnit(measure.unit, values, null);
  const ends = ({ low, high }: DoubtsAnswer['doubts'][number]): readonly DoubtEnd[] => [low, high];
  return html`
<section id="effects" aria-labelledby="effects-title">
<h2 id="effects-title">What each doubt does by itself</h2>
<p class="lede">One assumption at a time is set to either end of its range; everything else stays as the scenario says.</p>
${figure(charts, 'tornado')}
${table(
  'effects-table',
  `“${measure.name}” at either end, ${unit.many}, and its difference from the lab as stated`,
  [
    { title: 'Doubt' },
    { title: 'At', numeric: true },
    { title: measure.name, numeric: true },
    { title: 'Difference', numeric: true },
    { title: 'Verdict' },
  ],
  doubts.flatMap((doubt) =>
    ends(doubt).map((end) => [
      nameText(doubt.name),
      formatShare(end.factor),
      cell(end.value, unit, reasons),
      differenceCell(end, unit, reasons),
      OUTCOMES[end.outcome],
    ]),
  ),
  true,
)}
${reasons.list()}
</section>`;
}

function differenceCell({ difference, outcome }: DoubtEnd, unit: WrittenUnit, reasons: Reasons): Html {
  return outcome === 'no difference' ? html`0` : cell(difference, unit, reasons);
}

/** Whether targets hold in the drawn worlds. */
export function heldSection({ held, allHeld, run, worlds }: DoubtsAnswer): Html {
  if (held.length === 0) return html``;
  const rows = allHeld === null ? held : [...held, allHeld];
  return html`
<section id="in-worlds" aria-labelledby="held-title">
<h2 id="held-title">Whether the plan still holds</h2>
<p class="lede">In ${worlds} worlds everything in doubt was drawn anew, each factor from its range; one period was played in each.
Intervals are exact, ${formatLevel(run.level)}.</p>
${table(
  'held-table',
  'Share of the periods in which the target is met, %',
  [
    { title: 'Target' },
    { title: 'As stated', numeric: true },
    { title: 'In the drawn worlds', numeric: true },
  ],
  rows.map(({ target, asStated, inWorlds }) => [
    nameText(target),
    estimateCell(asStated, PERCENT),
    estimateCell(inWorlds, PERCENT),
  ]),
)}
</section>`;
}

/** Which assumption is worth measuring. */
export function explainedSection(answer: DoubtsAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  const reasons = new Reasons();
  return html`
<section id="explained" aria-labelledby="explained-title">
<h2 id="explained-title">What is worth measuring next</h2>
<p class="lede">The more of the differences between the drawn worlds an assumption explains, the more a measurement of it
would narrow the answer.</p>
${figure(charts, 'explained')}
${table(
  'explained-table',
  `Share of the variance of “${answer.measure.name}” over the drawn worlds, %`,
  [{ title: 'Doubt' }, { title: 'Range' }, { title: 'Explains', numeric: true }],
  [
    ...answer.doubts.map(({ name, low, typical, high, explains }) => [
      nameText(name),
      `${formatShare(low.factor)} to ${formatShare(high.factor)}, usually ${formatShare(typical)}`,
      estimateCell(explains, PERCENT, { reasons }),
    ]),
    ['all together', '', estimateCell(answer.explainedTogether, PERCENT, { reasons })],
  ],
)}
${reasons.list()}
</section>`;
}
