import { formatPlain } from '@buildweek/charts';
import {
  bareMoneyText,
  type StaffAnswer,
  type StaffPlan,
  WHOLE,
  writtenText,
  writtenUnit,
} from '@buildweek/results';
import { breachWords } from '@buildweek/study';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import type { Style } from '../terminal/style.ts';
import { numbers, type Row, tableText } from '../terminal/table.ts';

/** Hours on duty, overtime, at night, alone and with nobody there, and what each option costs. */
export function hoursSection({ plans, currency }: StaffAnswer, style: Style): string {
  const [today] = plans;
  const rows = plans.map(
    (plan): Row => ({
      over: [plan.name, ...costWords(plan, today, currency)].join(': '),
      cells: [
        formatPlain(plan.duty.roster),
        measured(plan, 'overtime of all people'),
        formatPlain(plan.duty.night),
        formatPlain(plan.duty.alone),
        formatPlain(plan.duty.nobody),
        measured(plan, 'machines run with nobody there'),
      ],
    }),
  );
  const columns = ['on duty', 'overtime', 'at night', 'one alone', 'nobody', 'machines run then'];
  const table = tableText(
    columns.map((title) => numbers(title)),
    rows,
    style,
  );
  return section('Hours a week', table, style);
}

function measured({ measures }: StaffPlan, name: string): string {
  const found = measures.find((measure) => measure.name === name);
  return found?.value.kind === 'estimate' ? writtenText(found.value, writtenUnit(found.unit, [], null)) : '';
}

/** What an option costs, and what it adds to the cost of today. */
function costWords(
  { costPerYear }: StaffPlan,
  today: StaffPlan | undefined,
  currency: string | null,
): string[] {
  const before = today?.costPerYear ?? null;
  if (costPerYear === null || before === null) return [];
  const more = costPerYear - before;
  const cost = `${bareMoneyText(costPerYear, WHOLE)} ${currency ?? 'money'} a year`;
  const change = `${more > 0 ? '+' : ''}${bareMoneyText(more, WHOLE)}`;
  return [Math.abs(more) < 0.5 ? cost : `${cost} (${change})`];
}

/** What the hours of each person were held against, and who does not keep it. */
export function rulesSection(
  plans: readonly StaffPlan[],
  { restHours, hoursPerWeek, daysInARow }: StaffAnswer['rules'],
  style: Style,
): string {
  const stated = `${formatPlain(restHours)} h of rest, at most ${formatPlain(hoursPerWeek)} h a week and ${daysInARow} days in a row`;
  const lines = plans.flatMap(({ name, breaches }) =>
    breaches.map((breach) => `${name}: ${breachWords(breach)} (first in the week of ${breach.firstDate})`),
  );
  const law = 'These rules are inputs; what the law allows is for others to say.';
  if (lines.length === 0) {
    return section('Rules', paragraph(`The hours of every person keep ${stated}. ${law}`, '  '), style);
  }
  return `${listSection(`Rules: ${stated}. Not kept by`, lines, style)}\n${paragraph(law, '  ')}`;
}
