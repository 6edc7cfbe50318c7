import { MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK } from '@buildweek/core';
import type { Lab, StaffRules } from '@buildweek/model';
import type { RuleBreach } from '@buildweek/results';
import type { Duties, PersonDuties, Stretch } from './duties.ts';

const HOURS_PER_DAY = 24;
const MILLISECONDS_PER_DAY = HOURS_PER_DAY * MILLISECONDS_PER_HOUR;
/** A shorter break does not begin a new duty. */
const LONGEST_BREAK_HOURS = 4;
const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
/** Hours that differ by less are equal. */
const DECIMALS = 6;

/** A breach before equal ones are put together. */
type Single = Omit<RuleBreach, 'times' | 'person' | 'firstDate'> & { readonly day: number };

/**
 * Where the duties of single persons break the rules of a scenario, equal ones of one person put together. Rest is
 * looked at as Directive 2003/88/EC, article 3, puts it: in the 24 hours from the start of a duty so many must be free
 * without a break; a break of less than 4 h begins no new duty. Whether hours are lawful is not for a program to say.
 */
export function ruleBreaches(lab: Lab, duties: Duties, rules: StaffRules): RuleBreach[] {
  return duties.persons.flatMap((person) => {
    const single = [
      ...shortRests(person, duties, rules.restHours),
      ...longWeeks(person, duties, rules.hoursPerWeek),
      ...longRuns(person, duties, rules.daysInARow),
    ];
    const together = new Map<string, RuleBreach>();
    for (const { day, ...breach } of single) {
      const key = `${breach.rule} ${breach.when} ${breach.found}`;
      const times = (together.get(key)?.times ?? 0) + 1;
      const firstDate = together.get(key)?.firstDate ?? dateOf(lab.startDate, day);
      together.set(key, { person: person.person, ...breach, times, firstDate });
    }
    return [...together.values()];
  });
}

function shortRests({ stretches }: PersonDuties, { localTime, horizon }: Duties, least: number): Single[] {
  const hours = (milliseconds: number): number => rounded(milliseconds / MILLISECONDS_PER_HOUR);
  const told = new Set<number>();
  return stretches.flatMap((stretch, index): Single[] => {
    const before = stretches[index - 1];
    const isNewDuty = before === undefined || hours(stretch.start - before.end) >= LONGEST_BREAK_HOURS;
    const until = stretch.start + MILLISECONDS_PER_DAY;
    if (!isNewDuty || until > horizon) return [];
    const rests = stretches
      .slice(index)
      .map(({ end }, position) => ({
        start: end,
        end: Math.min(until, stretches[index + position + 1]?.start ?? until),
      }))
      .filter((rest) => rest.start < rest.end);
    const longest = rests.reduce<Stretch | null>(
      (most, rest) => (most === null || rest.end - rest.start > most.end - most.start ? rest : most),
      null,
    );
    const found = longest === null ? 0 : hours(longest.end - longest.start);
    // The same rest may be the longest after two duties.
    const key = longest?.start ?? stretch.start;
    if (found >= least || told.has(key)) return [];
    told.add(key);
    const when =
      longest === null
        ? `on duty from ${clockOf(stretch.start, localTime)} for 24 h and more`
        : `${clockOf(longest.start, localTime)} to ${clockOf(longest.end, localTime)}`;
    return [{ rule: 'rest', when, found, limit: least, day: dayOf(key, localTime) }];
  });
}

/** Weeks from Monday to Sunday by the clock on the wall; a duty that goes on over midnight of Sunday counts in both. */
function longWeeks({ stretches }: PersonDuties, { localTime, weeks }: Duties, most: number): Single[] {
  return Array.from({ length: weeks }, (_, week) => {
    const from = localTime.toElapsed(week * MILLISECONDS_PER_WEEK);
    const to = localTime.toElapsed((week + 1) * MILLISECONDS_PER_WEEK);
    const onDuty = stretches.reduce(
      (sum, { start, end }) => sum + Math.max(0, Math.min(end, to) - Math.max(start, from)),
      0,
    );
    return { week, found: rounded(onDuty / MILLISECONDS_PER_HOUR) };
  }).flatMap(({ week, found }): Single[] =>
    found > most
      ? [{ rule: 'hours a week', when: 'Monday to Sunday', found, limit: most, day: week * 7 }]
      : [],
  );
}

/** Days on which a duty begins, or goes on from midnight to midnight, one after the other. */
function longRuns({ stretches }: PersonDuties, { localTime, weeks }: Duties, most: number): Single[] {
  const worked = new Set<number>();
  for (const { start, end } of stretches) {
    worked.add(dayOf(start, localTime));
    const last = Math.floor(localTime.toLocal(end) / MILLISECONDS_PER_DAY);
    for (let day = dayOf(start, localTime) + 1; day < last; day++) worked.add(day);
  }
  const breaches: Single[] = [];
  for (let day = 0, run = 0; day <= weeks * 7; day++) {
    if (worked.has(day)) {
      run++;
      continue;
    }
    const first = day - run;
    if (run > most) {
      const when = `${WEEKDAYS[first % 7] ?? ''} to ${WEEKDAYS[(day - 1) % 7] ?? ''}`;
      breaches.push({ rule: 'days in a row', when, found: run, limit: most, day: first });
    }
    run = 0;
  }
  return breaches;
}

function dayOf(time: number, localTime: Duties['localTime']): number {
  return Math.floor(localTime.toLocal(time) / MILLISECONDS_PER_DAY);
}

/** `Monday 06:00`. */
function clockOf(time: number, localTime: Duties['localTime']): string {
  const minutes = Math.round(localTime.toLocal(time) / 60_000) % (24 * 60);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${WEEKDAYS[dayOf(time, localTime) % 7] ?? ''} ${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

function rounded(hours: number): number {
  return Number(hours.toFixed(DECIMALS));
}

/** @param day of the plan; 0 is its first Monday */
function dateOf(startDate: string, day: number): string {
  return new Date(Date.parse(startDate) + day * MILLISECONDS_PER_DAY).toISOString().slice(0, 10);
}
