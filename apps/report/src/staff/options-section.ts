import {
  type EstimateOrRefused,
  type PlanDifference,
  type StaffAnswer,
  type StaffPlan,
  signedText,
  type WrittenUnit,
  writtenUnit,
} from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { cell } from '../plans/plan-cells.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';

const GROUPS: readonly (readonly [StaffPlan['hoursAgainstToday'], string])[] = [
  ['the same', 'With the same hours'],
  ['more', 'With more hours'],
  ['fewer', 'With fewer hours'],
];

/** The first measure of the second table: what comes before is lead times and promises. */
const FIRST_OF_WORK = 'people at work';

/** All options with everything that was measured; lead times sorted by whether they take as many hours as today. */
export function optionsSection(answer: StaffAnswer): Html {
  const [today, ...options] = answer.plans;
  if (today === undefined) return html``;
  const reasons = new Reasons();
  const split = today.measures.findIndex(({ name }) => name === FIRST_OF_WORK);
  const isWork = (index: number): boolean => split >= 0 && index >= split;
  const tables = GROUPS.map(([kind, title], index) => {
    const group = options.filter(({ hoursAgainstToday }) => hoursAgainstToday === kind);
    return group.length === 0
      ? null
      : optionTable(answer, title, `options-${index}`, [today, ...group], (one) => !isWork(one), reasons);
  });
  return html`
<section id="options" aria-labelledby="options-title">
<h2 id="options-title">The options</h2>
<p class="lede">Each value stands over its change against today. A change in brackets is not told apart from none.</p>
${tables}
${split < 0 ? null : optionTable(answer, 'People at work, and what an average job waits for', 'options-work', answer.plans, isWork, reasons)}
${reasons.list()}
</section>`;
}

function optionTable(
  { currency }: StaffAnswer,
  title: string,
  id: string,
  plans: readonly StaffPlan[],
  isShown: (index: number) => boolean,
  reasons: Reasons,
): Html {
  const [today] = plans;
  // Hours of people and machines a week have a table of their own.
  const columns = (today?.measures ?? []).flatMap((measure, index) =>
    measure.unit === 'hours per week' || !isShown(index)
      ? []
      : [
          {
            index,
            measure,
            unit: writtenUnit(
              measure.unit,
              plans.flatMap((plan) => known(plan.measures[index]?.value)),
              currency,
            ),
          },
        ],
  );
  return table(
    id,
    title,
    [
      { title: 'Option' },
      ...columns.map(({ measure, unit }) => ({ title: `${measure.name}, ${unit.many}`, numeric: true })),
    ],
    plans.map((plan) => [
      nameText(plan.name),
      ...columns.map(({ index, unit }) => {
        const value = plan.measures[index]?.value;
        const difference = plan.differences[index];
        if (value === undefined) return html``;
        return html`${cell(value, unit, reasons)}${difference === undefined ? null : changeLine(difference, unit)}`;
      }),
    ]),
    true,
  );
}

/** The change below a value; in brackets where it is not told apart from none. */
function changeLine({ difference, outcome }: PlanDifference, unit: WrittenUnit): Html {
  if (outcome === 'no difference') return html`<br>0`;
  if (difference.kind !== 'estimate') return html``;
  const text = signedText(difference, unit);
  if (outcome === 'not told apart') return html`<br>[${text}]`;
  return html`<br>${outcome === 'better' ? '▲ ' : outcome === 'worse' ? '▼ ' : ''}${text}`;
}

function known(value: EstimateOrRefused | undefined): number[] {
  return value?.kind === 'estimate' ? [value.value] : [];
}

/** What each option means, and the words of the scenario that make it. */
export function changesSection({ plans, leftOut }: StaffAnswer): Html {
  return html`
<section id="changes" aria-labelledby="changes-title">
<h2 id="changes-title">What the options change in the scenario</h2>
<p class="lede">Changes in words of the scenario, to be copied: into the file itself, under “staff / options”, or behind
“buildweek compare … --with”.</p>
${plans.slice(1).map(
  ({ name, meaning, changes }) => html`
<details><summary>${nameText(name)}${meaning === '' ? null : html`: <bdi>${meaning}</bdi>`}</summary>
<ul class="notes">${changes.map((change) => html`<li><bdi><code>${change}</code></bdi></li>`)}</ul></details>`,
)}
${
  leftOut.length === 0
    ? null
    : html`<h3>Left out</h3>
<ul class="notes">${leftOut.map(({ name, reason }) => html`<li>${nameText(name)}: ${nameText(reason)}</li>`)}</ul>`
}
</section>`;
}
