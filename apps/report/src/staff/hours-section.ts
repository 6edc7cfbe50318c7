import { formatPlain } from '@buildweek/charts';
import {
  bareMoneyText,
  type StaffAnswer,
  type StaffPlan,
  WHOLE,
  writtenText,
  writtenUnit,
} from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';

const WHAT_BREAKS: Readonly<Record<StaffPlan['breaches'][number]['rule'], string>> = {
  rest: 'too little rest, h',
  'hours a week': 'too many hours a week',
  'days in a row': 'too many days in a row',
};

/** Hours on duty, at night, alone and with nobody there, what they cost, and which rules they break. */
export function staffHoursSection(answer: StaffAnswer): Html {
  const { plans, currency, rules } = answer;
  const hasCosts = currency !== null && plans.some(({ costPerYear }) => costPerYear !== null);
  const measured = ({ measures }: StaffPlan, name: string): string => {
    const found = measures.find((measure) => measure.name === name);
    return found?.value.kind === 'estimate'
      ? writtenText(found.value, writtenUnit(found.unit, [], null))
      : '';
  };
  return html`
<section id="hours" aria-labelledby="hours-title">
<h2 id="hours-title">Hours, nights, and rules</h2>
<p class="lede">Hours a week by the calendars with stated leave; absence by chance comes on top. Night is
${clock(rules.night.fromHour)} to ${clock(rules.night.toHour)}.</p>
${table(
  'hours-table',
  'Hours a week',
  [
    { title: 'Option' },
    { title: 'On duty, all persons', numeric: true },
    { title: 'Overtime', numeric: true },
    { title: 'Person hours at night', numeric: true },
    { title: 'One person alone', numeric: true },
    { title: 'Nobody there', numeric: true },
    { title: 'Machine hours with nobody there', numeric: true },
    ...(hasCosts ? [{ title: `Cost, ${currency} a year`, numeric: true }] : []),
  ],
  plans.map((plan) => [
    nameText(plan.name),
    formatPlain(plan.duty.roster),
    measured(plan, 'overtime of all people'),
    formatPlain(plan.duty.night),
    formatPlain(plan.duty.alone),
    formatPlain(plan.duty.nobody),
    measured(plan, 'machines run with nobody there'),
    ...(hasCosts ? [plan.costPerYear === null ? '' : bareMoneyText(plan.costPerYear, WHOLE)] : []),
  ]),
)}
${breaches(answer)}
</section>`;
}

function breaches({ plans, rules }: StaffAnswer): Html {
  const stated = `${formatPlain(rules.restHours)} h of rest within the 24 h from the start of a duty, ${formatPlain(rules.hoursPerWeek)} h a week, ${rules.daysInARow} days in a row`;
  const rows = plans.flatMap(({ name, breaches: found }) =>
    found.map((breach) => [
      nameText(name),
      nameText(breach.person),
      WHAT_BREAKS[breach.rule],
      breach.when,
      formatPlain(breach.found),
      formatPlain(breach.limit),
      breach.times,
      breach.firstDate,
    ]),
  );
  const closing = html`<p>These rules are inputs. That hours keep them is no statement about the law, and neither is that they break them: ask those who judge it.</p>`;
  if (rows.length === 0)
    return html`<p>The hours of every person keep what they are held against: ${stated}.</p>${closing}`;
  return html`
${table(
  'breaches-table',
  `Hours that do not keep what they are held against: ${stated}`,
  [
    { title: 'Option' },
    { title: 'Person' },
    { title: 'What' },
    { title: 'When' },
    { title: 'Found', numeric: true },
    { title: 'Limit', numeric: true },
    { title: 'Times', numeric: true },
    { title: 'First' },
  ],
  rows,
)}
${closing}`;
}

function clock(hour: number): string {
  const minutes = Math.round(hour * 60) % (24 * 60);
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}
