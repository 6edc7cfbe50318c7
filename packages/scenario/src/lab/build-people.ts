import type { CountDistribution, Leave, PeopleGroup, WorkingCalendar } from '@buildweek/model';
import type { Reading } from '../reading.ts';
import type { Scenario, ScenarioPeople } from '../scenario.ts';
import type { AbsenceWording } from '../words/absence.ts';
import { dateText } from '../words/dates.ts';
import { lastDayOf, planWords } from './check-dates.ts';

/** Spells are counted one length after the other up to this share of them. */
const TAIL = 1e-9;
const LONGEST_SPELL_DAYS = 10_000;

/** Groups of people, with leave counted from the start of the plan and absence as the chance that a spell begins. */
export function buildPeople(
  scenario: Scenario,
  calendars: readonly WorkingCalendar[],
  reading: Reading,
): PeopleGroup[] {
  return scenario.people.map((group) => {
    const calendar = calendars.find((candidate) => candidate.name === group.calendar);
    return {
      ...group,
      leave: leaveOf(group, scenario, reading),
      absence:
        group.absence === null
          ? null
          : {
              chancePerDay: chanceOfSpell(group.absence, workDays(calendar)),
              days: group.absence.days,
            },
    };
  });
}

function leaveOf(group: ScenarioPeople, scenario: Scenario, reading: Reading): Leave[] {
  return group.leave.flatMap(({ person, firstDay, lastDay }) => {
    const isOver = lastDay < scenario.startDay;
    const isKnown = !reading.isInDoubt([], 'starts') && !reading.isInDoubt(['simulate'], 'weeks');
    if (isKnown && (isOver || firstDay > lastDayOf(scenario))) {
      const path = ['people', group.name, 'leave'];
      const ofPerson = [`${person}`, `${group.name} ${person}`].map((key) => [...path, key]);
      const at = ofPerson.find((candidate) => reading.nodeAt(candidate) !== undefined) ?? path;
      reading.report(at, 'key', {
        severity: 'warning',
        message: isOver
          ? 'This leave is over before the plan starts.'
          : 'This leave begins after the last week of the plan and has no effect.',
        found: `${dateText(firstDay)} to ${dateText(lastDay)}`,
        expected: `dates in the weeks of the plan: ${planWords(scenario)}`,
        write: isOver
          ? 'later dates (is the year right?), or nothing'
          : 'earlier dates (is the year right?), or nothing',
      });
      return [];
    }
    const fromHour = (firstDay - scenario.startDay) * 24;
    return [{ person, fromHour, toHour: (lastDay + 1 - scenario.startDay) * 24 }];
  });
}

/**
 * The chance that a spell begins on a day of work, so that a share `s` of the days of work is missed. A spell
 * misses W days of work on average; between two spells lie (1 - p) / p days of work on average, so that
 * s = W / (W + (1 - p) / p). Spells are taken to begin on each weekday of work alike, which is exact for
 * single days and good for small shares.
 *
 * @param workDays for each day of the week (0 is Monday) whether work begins on it
 * @returns chance per person and day of work, 0 to 1
 */
export function chanceOfSpell({ share, days }: AbsenceWording, workDays: readonly boolean[]): number {
  const missed = workDaysOfSpell(days, workDays);
  return share / (share + missed * (1 - share));
}

/** Mean number of days of work in a spell that begins on a day of work. */
function workDaysOfSpell(days: CountDistribution, workDays: readonly boolean[]): number {
  const starts = workDays.flatMap((works, day) => (works ? [day] : []));
  if (starts.length === 0) return 1;
  let mean = 0;
  for (let length = 1; length <= LONGEST_SPELL_DAYS; length++) {
    // The day with this number of a spell is missed when the spell is at least so long.
    const reaches = shareReaching(days, length);
    if (reaches < TAIL) break;
    const working = starts.filter((day) => workDays[(day + length - 1) % 7]).length;
    mean += (reaches * working) / starts.length;
  }
  return mean;
}

/** Share of counts that are at least `least`. */
function shareReaching(days: CountDistribution, least: number): number {
  switch (days.kind) {
    case 'fixed':
      return days.value >= least ? 1 : 0;
    case 'uniform':
      return Math.min(1, Math.max(0, (days.high - least + 1) / (days.high - days.low + 1)));
    case 'list':
      return days.values.filter((value) => value >= least).length / days.values.length;
    case 'geometric':
      return (1 - 1 / days.mean) ** (least - 1);
  }
}

function workDays(calendar: WorkingCalendar | undefined): boolean[] {
  const weekly = calendar?.weekly ?? [];
  const isOpenAlways = weekly.some((span) => span.toHour - span.fromHour >= 168);
  return Array.from(
    { length: 7 },
    (_, day) => isOpenAlways || weekly.some((span) => Math.floor(span.fromHour / 24) === day),
  );
}
