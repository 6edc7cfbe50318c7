import { formatCount, formatEstimate, formatShare, PERCENT, VERDICT_MARKS } from '@buildweek/charts';
import type { GrowthAnswer, GrowthMonth, GrowthStep, TargetAtLevel } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Content, type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

function targetCell({ share, verdict }: TargetAtLevel): Content {
  const words = `${VERDICT_MARKS[verdict]} ${verdict}`;
  if (share.kind !== 'estimate') return words;
  return html`${formatEstimate(share, { ...PERCENT, one: '', many: '' })} <span class="wait">${words}</span>`;
}

/** The lab as it is, month by month. @param onTop position of the target whose chart stands in the head */
export function nothingBoughtSection(
  answer: GrowthAnswer,
  charts: ReadonlyMap<string, DrawnChart>,
  onTop: number,
): Html {
  return html`
<section id="nothing" aria-labelledby="nothing-title">
<h2 id="nothing-title">If nothing is bought</h2>
${answer.targets.map((_, index) => (index === onTop ? null : figure(charts, `growth-${index + 1}`)))}
${monthsTable(answer, 'months-table', 'The lab as it is, at the demand of each month: share, %, and verdict', answer.months)}
</section>`;
}

function monthsTable(
  { targets }: GrowthAnswer,
  id: string,
  caption: string,
  months: readonly GrowthMonth[],
): Html {
  return table(
    id,
    caption,
    [
      { title: 'Month' },
      { title: 'Demand', numeric: true },
      ...targets.map(({ wording }) => ({ title: nameText(wording), numeric: true })),
    ],
    months.map(({ label, demand, targets: found }) => [label, formatShare(demand), ...found.map(targetCell)]),
    true,
  );
}

/** What one more of each brings in the month in which it is needed. */
export function stepsSection(answer: GrowthAnswer): Html {
  const { steps, neededIn, months, currency } = answer;
  if (neededIn === null || steps.length === 0) return html``;
  const month = months[neededIn]?.label ?? '';
  const money = (amount: number | null): string =>
    amount === null ? 'not stated' : `${formatCount(Math.round(amount))} ${currency ?? ''}`;
  return html`
<section id="steps" aria-labelledby="steps-title">
<h2 id="steps-title">What one more would bring</h2>
<p class="lede">Each was tried alone in ${month}, the first month in which a target is missed; what restores the targets was
played through the months behind it. A machine gains nothing where people are short, and the other way round.</p>
${table(
  'steps-table',
  `One more of each, in ${month}`,
  [
    { title: 'One more' },
    { title: 'Restores all targets' },
    { title: 'Holds until' },
    { title: 'Order by' },
    { title: 'Gain of the first missed target, points', numeric: true },
    { title: 'A year', numeric: true },
    { title: 'Price', numeric: true },
  ],
  steps.map((step) => [
    nameText(step.name),
    step.restores,
    step.restores === 'no' ? '' : holdsWords(step, answer),
    step.restores === 'no' ? '' : orderWords(step),
    step.gain.kind === 'estimate'
      ? formatEstimate(step.gain, { ...PERCENT, one: '', many: '' })
      : step.gain.reason,
    html`${money(step.perYear)}${overBudget(step)}`,
    money(step.price),
  ]),
  true,
)}
${purchasesTable(answer, money)}
</section>`;
}

/** What to buy one after the other, where once is not enough. */
function purchasesTable(answer: GrowthAnswer, money: (amount: number | null) => string): Html | null {
  if (answer.purchases.length < 2) return null;
  return table(
    'purchases-table',
    'What to order when, so that all targets hold; each together with all above it',
    [
      { title: 'Order by' },
      { title: 'What' },
      { title: 'Works from' },
      { title: 'Holds until' },
      { title: 'A year', numeric: true },
      { title: 'Price', numeric: true },
    ],
    answer.purchases.map((purchase) => [
      orderWords(purchase),
      nameText(purchase.name),
      purchase.months[0]?.label ?? '',
      holdsWords(purchase, answer),
      html`${money(purchase.perYear)}${overBudget(purchase)}`,
      money(purchase.price),
    ]),
    true,
  );
}

function orderWords({ isLate, orderBy }: Pick<GrowthStep, 'isLate' | 'orderBy'>): string {
  return isLate ? `at once (${orderBy} is past)` : orderBy;
}

function overBudget({ overBudget: broken }: Pick<GrowthStep, 'overBudget'>): Html | null {
  return broken.length === 0 ? null : html`<br><span class="wait">over budget</span>`;
}

function holdsWords(
  { holdsUntil, months }: Pick<GrowthStep, 'holdsUntil' | 'months'>,
  { horizon }: GrowthAnswer,
): string {
  const label = months.find(({ month }) => month === holdsUntil)?.label ?? '';
  return `${label}${holdsUntil === horizon ? ' and on' : ''}`;
}
