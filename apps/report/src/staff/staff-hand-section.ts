import { formatShare, shownOption } from '@buildweek/charts';
import { type StaffAnswer, type StaffPlan, writtenText, writtenUnit } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

const LEAD_TIME = 'mean lead time';

/** What a page of arithmetic says of each option, beside what was simulated. */
export function staffHandSection(answer: StaffAnswer): Html {
  const { plans } = answer;
  const shown = shownOption(answer);
  const told = plans.filter((plan, index) => index === 0 || plan === shown);
  const unit = writtenUnit(
    'hours',
    plans.flatMap((plan) => [plan.handHours ?? 0, simulated(plan)?.value ?? 0]),
    null,
  );
  return html`
<section id="hand" aria-labelledby="hand-title">
<h2 id="hand-title">The same by hand</h2>
<p class="lede">Loads are hours asked for over hours available; a mean lead time follows from formulas of queues. They know
nothing of when in the week somebody is there, so that other hours for the same people change nothing in them.</p>
<ul class="notes">${told.map(({ name, handSentence }) => (handSentence === '' ? null : html`<li>${nameText(name)}: ${handSentence}</li>`))}</ul>
${table(
  'hand-table',
  'Simulation and hand calculation',
  [
    { title: 'Option' },
    { title: `Mean lead time simulated, ${unit.many}`, numeric: true },
    { title: `By formulas, ${unit.many}`, numeric: true },
    { title: 'Highest load of people by hand' },
  ],
  plans.map((plan) => {
    const found = simulated(plan);
    return [
      nameText(plan.name),
      found === null ? 'not known' : writtenText(found, unit),
      plan.handHours === null
        ? 'none: a queue grows'
        : writtenText({ value: plan.handHours, low: plan.handHours, high: plan.handHours }, unit),
      highestLoad(plan),
    ];
  }),
)}
</section>`;
}

function simulated({ measures }: StaffPlan): { value: number; low: number; high: number } | null {
  const value = measures.find(({ name }) => name === LEAD_TIME)?.value;
  return value?.kind === 'estimate' ? value : null;
}

function highestLoad({ handCalculation }: StaffPlan): Html | string {
  const [highest] = handCalculation
    .filter(({ kind }) => kind === 'people')
    .sort((one, other) => other.load - one.load);
  return highest === undefined ? '' : html`${nameText(highest.name)}, ${formatShare(highest.load)}`;
}
