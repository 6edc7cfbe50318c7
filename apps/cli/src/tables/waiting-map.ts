import { formatPlain } from '@buildweek/charts';
import type { StaffPlan } from '@buildweek/results';
import { harmless, type Style } from '../terminal/style.ts';

const HOURS_PER_DAY = 24;
const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
/** Marks by how many jobs wait, as shares of the most: none, then fifths. */
const MARKS = ['·', '-', '+', 'o', 'O', '#'];
const GAP = '   ';
/** Fewer jobs count as none, as a share of the most. */
const NONE = 0.02;

/**
 * How many jobs wait for people in every hour of the week, one mark for each: a block of seven days for every plan, all
 * on one scale.
 */
export function waitingMap(plans: readonly StaffPlan[], style: Style): string {
  const most = Math.max(...plans.flatMap(({ waiting }) => waiting));
  if (!(most > 0)) return '  No job ever waits for a person.';
  const markOf = (jobs: number): string => {
    if (jobs < NONE * most) return MARKS[0] ?? '';
    return MARKS[Math.max(1, Math.ceil((jobs / most) * (MARKS.length - 1)))] ?? '';
  };
  const blocks = plans.map(({ name, waiting }) => [
    style.heading(harmless(shortened(name)).padEnd(HOURS_PER_DAY)),
    style.faint('0     6     12    18    '),
    ...DAYS.map((_, day) =>
      waiting
        .slice(day * HOURS_PER_DAY, (day + 1) * HOURS_PER_DAY)
        .map(markOf)
        .join(''),
    ),
  ]);
  const sides = ['    ', '    ', ...DAYS.map((day) => `${day} `)];
  const lines = sides.map((side, line) =>
    `  ${side}${blocks.map((block) => block[line] ?? '').join(GAP)}`.trimEnd(),
  );
  const step = most / (MARKS.length - 1);
  const key = MARKS.map((mark, index) =>
    index === 0 ? `${mark} none` : `${mark} to ${formatPlain(index * step)}`,
  ).join('   ');
  return [...lines, `  ${key}`].join('\n');
}

function shortened(name: string): string {
  const letters = Array.from(name);
  return letters.length <= HOURS_PER_DAY ? name : `${letters.slice(0, HOURS_PER_DAY - 1).join('')}…`;
}
