import type { WorkingHours } from '../facts/working-hours.ts';

const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
/** Nobody works longer in one go: what is left of a day is a second shift. */
const LONGEST_SHIFT = 9;
/** The names of the groups of people. */
const PEOPLE = { day: 'technicians', late: 'late shift' } as const;

/** Opening hours and people: the hours from the log where it tells any, the number of people so that they can carry the demand. */
export function hoursLines(
  hours: WorkingHours | null,
  skills: readonly string[],
  counts: ReadonlyMap<string, number>,
): string[] {
  const able = `skills: [${skills.join(', ')}]`;
  const { days, fromHour, toHour } = hours ?? { days: [0, 1, 2, 3, 4], fromHour: 8, toHour: 17 };
  const source =
    hours === null
      ? 'not in the log: common practice, check'
      : `in the log ${hours.counted} finishes and beginnings of work lie there, but for two in a hundred at either end`;
  const isLong = toHour - fromHour > LONGEST_SHIFT + 1;
  const change = isLong ? fromHour + LONGEST_SHIFT : toHour;
  const on = daysText(days);
  return [
    `hours: # ${source}; without breaks`,
    `  day: { ${on}: ${clock(fromHour)}-${clock(change)} }`,
    ...(isLong ? [`  late: { ${on}: ${clock(change)}-${clock(toHour)} }`] : []),
    '',
    'people: # not in the log: as many as carry the demand by hand arithmetic, check',
    `  ${PEOPLE.day}: { count: ${counts.get(PEOPLE.day) ?? 1}, hours: day, ${able}, other duties: 15 % }`,
    ...(isLong
      ? [
          `  ${PEOPLE.late}: { count: ${counts.get(PEOPLE.late) ?? 1}, hours: late, ${able}, other duties: 5 % }`,
        ]
      : []),
  ];
}

/** `mon-fri`, `mon-wed fri`. */
function daysText(days: readonly number[]): string {
  const spans: string[] = [];
  for (let index = 0; index < days.length; index++) {
    const first = days[index] ?? 0;
    let last = first;
    while (days[index + 1] === last + 1) {
      index++;
      last++;
    }
    spans.push(first === last ? (WEEKDAYS[first] ?? '') : `${WEEKDAYS[first]}-${WEEKDAYS[last]}`);
  }
  return spans.join(', ');
}

function clock(hour: number): string {
  return `${String(hour).padStart(2, '0')}:00`;
}
