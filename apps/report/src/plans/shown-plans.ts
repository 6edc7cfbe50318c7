import { formatCount, formatEstimate, PERCENT } from '@buildweek/charts';
import { type PlanAnswer, planLabel, type ShownPlan, SPEED_MEASURE, writtenUnit } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';
import { cell } from './plan-cells.ts';

const VERDICTS: Readonly<Record<ShownPlan['verdict'], string>> = {
  met: '✓ meets every target',
  missed: '✗ misses a target',
  undecided: 'not decided',
  'not tested': 'not tested',
};

const ROLES: Readonly<Record<ShownPlan['role'], string>> = {
  chosen: 'The answer',
  today: 'Today',
  'near miss': 'Closest',
  'next below': 'Next cheaper',
  undecided: 'Open',
  'one more': 'One more',
  'one fewer': 'One fewer',
  'along the way': 'On the way',
};

/** The answer with the plans around it: why each of them is not the answer. */
export function plansSection(answer: PlanAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  const { shown, currency } = answer;
  const reasons = new Reasons();
  const chosen = shown.find(({ role }) => role === 'chosen');
  const speeds = shown.map(({ measures }) => measures.find(({ name }) => name === SPEED_MEASURE)?.value);
  const unit = writtenUnit(
    'hours',
    speeds.flatMap((value) => (value?.kind === 'estimate' ? [value.value] : [])),
    currency,
  );
  const targets = shown[0]?.targets ?? [];
  return html`
<section id="plans" aria-labelledby="plans-title">
<h2 id="plans-title">The answer and what stands around it</h2>
<p class="lede">A plan is what may be chosen, everything else as the scenario says; plans are named by what
differs from the answer. The verdict comes from the search;
where a plan was only played to be shown, it is “not tested”. Times are by the clock, nights and closed days
included, also where a target counts working days.</p>
${figure(charts, 'cost-against-speed')}
${table(
  'plans-table',
  'Plans with their costs, speed and targets',
  [
    { title: 'Plan' },
    { title: 'What it is' },
    { title: 'Verdict' },
    ...(currency === null
      ? []
      : [
          { title: `${currency} a year`, numeric: true },
          { title: `${currency} to buy`, numeric: true },
        ]),
    { title: `Nine of ten jobs within, ${unit.many}`, numeric: true },
    ...targets.map(({ target }) => ({ title: html`<bdi>${target}</bdi>, %`, numeric: true })),
    { title: 'Why not this one' },
  ],
  shown.map((plan, index) => {
    const speed = speeds[index];
    return [
      html`${index + 1}: ${nameText(planLabel(plan, chosen))}`,
      roleWords(plan),
      VERDICTS[plan.verdict],
      ...(currency === null
        ? []
        : [formatCount(Math.round(plan.committedCost ?? 0)), formatCount(Math.round(plan.purchase ?? 0))]),
      speed === undefined ? '' : cell(speed, unit, reasons),
      ...plan.targets.map(({ value }) =>
        value.kind === 'estimate'
          ? formatEstimate(value, { ...PERCENT, one: '', many: '' })
          : cell(value, unit, reasons),
      ),
      nameText(plan.why),
    ];
  }),
  true,
)}
${reasons.list()}
</section>`;
}

function roleWords({ role, isToday, committedCost }: ShownPlan): string {
  // Without money plans are put in order by how much there is in them.
  const words = role === 'next below' && committedCost === null ? 'Next smaller' : ROLES[role];
  return isToday && role !== 'today' ? `${words}, today` : words;
}

/** Each target over the plans. */
export function targetsSection(answer: PlanAnswer, charts: ReadonlyMap<string, DrawnChart>): Html {
  const targets = answer.shown[0]?.targets ?? [];
  if (targets.length === 0) return html``;
  return html`
<section id="targets" aria-labelledby="targets-title">
<h2 id="targets-title">Who reaches which target</h2>
${targets.map((_, position) => figure(charts, `target-${position + 1}`))}
</section>`;
}

/** What one more or one fewer of each thing would change, on the same random numbers as the answer. */
export function neighboursSection(answer: PlanAnswer): Html {
  const { shown, currency } = answer;
  const chosen = shown.find(({ role }) => role === 'chosen');
  const near = shown.filter(({ role }) => role === 'one more' || role === 'one fewer');
  if (chosen === undefined || near.length === 0) return html``;
  const reasons = new Reasons();
  const told = chosen.measures.filter(({ better }) => better !== 'neither');
  return html`
<section id="one-more" aria-labelledby="one-more-title">
<h2 id="one-more-title">One more, or one fewer</h2>
<p class="lede">Against the answer, on the same random numbers. Intervals hold at once within a row.</p>
${table(
  'one-more-table',
  'What one step away from the answer changes',
  [
    { title: 'Change' },
    ...(currency === null ? [] : [{ title: `${currency} a year`, numeric: true }]),
    ...told.map(({ name, unit }) => {
      const written = writtenUnit(unit, differencesOf(near, name), currency);
      return { title: `${name}, ${unit === 'share' ? 'points' : written.many}`, numeric: true };
    }),
  ],
  near.map((plan) => [
    nameText(plan.why),
    ...(currency === null ? [] : [signed((plan.committedCost ?? 0) - (chosen.committedCost ?? 0))]),
    ...told.map(({ name, unit }) => {
      const found = plan.againstChosen.find(({ measure }) => measure === name);
      if (found === undefined) return '';
      if (found.outcome === 'no difference') return '0';
      return cell(found.difference, writtenUnit(unit, differencesOf(near, name), currency), reasons);
    }),
  ]),
  true,
)}
${reasons.list()}
</section>`;
}

function differencesOf(plans: readonly ShownPlan[], name: string): number[] {
  return plans.flatMap(({ againstChosen }) => {
    const found = againstChosen.find(({ measure }) => measure === name)?.difference;
    return found?.kind === 'estimate' ? [found.value] : [];
  });
}

function signed(amount: number): string {
  const text = formatCount(Math.abs(Math.round(amount)));
  return amount < 0 ? `−${text}` : `+${text}`;
}
