import { formatPlain } from '@buildweek/charts';
import type { StaffPlan } from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { harmless, type Style } from '../terminal/style.ts';

const HOURS_PER_DAY = 24;
const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
/** Marks by how many jobs wait, as shares of the most: none, then fifths. */
const MARKS = ['·', '-', '+', 'o', 'O', '#'];
const GAP = '   ';
/** Stands under hours in which somebody is on duty. */
const ATTENDED = '▔';
/** Fewer persons than this are rounding, not a shift. */
const SOMEBODY = 0.05;
/** Fewer jobs count as none, as a share of the most. */
const NONE = 0.02;

/**
 * How many jobs wait for people in every hour of the week, one mark for each, over a bar where somebody is on duty: a
 * block of seven days for every plan, all on one scale.
 */
export function waitingMap(plans: readonly StaffPlan[], style: Style): string {
  const most = Math.max(...plans.flatMap(({ waiting }) => waiting));
  if (!(most > 0)) return '  No job ever waits for a person.';
  const markOf = (jobs: number): string => {
    if (jobs < NONE * most) return MARKS[0] ?? '';
    return MARKS[Math.max(1, Math.ceil((jobs / most) * (MARKS.length - 1)))] ?? '';
  };
  const blocks = plans.map(({ name, waiting, duty }) => [
    style.heading(harmless(shortened(name)).padEnd(HOURS_PER_DAY)),
    style.faint('0     6     12    18    '),
    ...DAYS.flatMap((_, day) => [
      hoursOf(waiting, day).map(markOf).join(''),
      hoursOf(duty.personsByHourOfWeek, day)
        .map((persons) => (persons >= SOMEBODY ? ATTENDED : ' '))
        .join(''),
    ]),
  ]);
  const sides = ['    ', '    ', ...DAYS.flatMap((day) => [`${day} `, '    '])];
  const lines = sides.map((side, line) =>
    `  ${side}${blocks.map((block) => block[line] ?? '').join(GAP)}`.trimEnd(),
  );
  const step = most / (MARKS.length - 1);
  const key = MARKS.map((mark, index) =>
    index === 0 ? `${mark} none` : `${mark} to ${formatPlain(index * step)}`,
  ).join('   ');
  return [
    ...lines,
    `  ${key}`,
    paragraph(
      `Jobs that wait, on average; ${ATTENDED}${ATTENDED} somebody is on duty. Much above a bar: those who are there are too few. Much without a bar: somebody is missing at this hour.`,
      '  ',
    ),
  ].join('\n');
}

function hoursOf(week: readonly number[], day: number): number[] {
  return week.slice(day * HOURS_PER_DAY, (day + 1) * HOURS_PER_DAY);
}

function shortened(name: string): string {
  const letters = Array.from(name);
  return letters.length <= HOURS_PER_DAY ? name : `${letters.slice(0, HOURS_PER_DAY - 1).join('')}…`;
}
