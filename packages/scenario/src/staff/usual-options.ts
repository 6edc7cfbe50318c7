import type { HourSpan } from '@buildweek/model';
import type { ChangeWording } from '../change/change-wording.ts';
import type { Scenario, StaffOption } from '../scenario.ts';
import { type StaffGroup, StaffText } from './staff-group.ts';
import {
  canBeWritten,
  clockText,
  dayOf,
  hoursGroup,
  hoursWords,
  moved,
  weeklyHours,
  windowsOfDay,
  withoutEndOfDay,
} from './week-hours.ts';

const NOON = 12;
/** Who is there longer a week has no hours that could be moved. */
const LONGEST_WEEK_HOURS = 80;
const LATER_HOURS = [2, 3] as const;
const EARLIEST_START = 6;
const EARLIER_HOURS = 2;
const SATURDAY_HOURS = 4;
const FRIDAY = 4;
const SATURDAY = 5;

/**
 * Ways of staffing a lab that are worth a look, made of the people who are there: later and earlier starts, an evening
 * shift, Saturday morning, work in other hours that exist, two who learn from each other, one person more and one
 * fewer. Whether they can be played, reading the changed text says. Which ones are looked at is a choice of this
 * program (common practice, no source).
 *
 * Groups are alike in hours and skills; where one person of several changes them, the last of the group becomes a group
 * with a name of its own, and with it gets random numbers of its own (absence, other duties). Those who stay keep theirs.
 *
 * @param scenario as read from the text
 * @param text of the file
 */
export function usualStaffOptions(scenario: Scenario, text: string): StaffOption[] {
  const people = new StaffText(scenario, text);
  return [
    ...people.groups.flatMap((group) => [
      ...laterStarts(people, group),
      ...earlyAndLate(people, group),
      ...evenings(people, group),
      ...saturdays(people, group),
    ]),
    ...trained(people),
    ...people.groups.flatMap((group) => numbers(people, group)),
  ];
}

/** Whether people come in the morning and leave again, so that their hours can be moved. */
function isDayGroup({ weekly: { weekly } }: StaffGroup): boolean {
  return weeklyHours(weekly) <= LONGEST_WEEK_HOURS && canBeWritten(weekly) && dayOf(weekly).fromHour < NOON;
}

/** One of a group, or all there is of it, with other hours. */
function withHours(
  people: StaffText,
  group: StaffGroup,
  name: string,
  kind: string,
  weekly: readonly HourSpan[],
): StaffOption[] {
  if (!canBeWritten(weekly)) return [];
  const hours = hoursGroup({ ...group.weekly, weekly });
  return [
    {
      name,
      meaning: `${lastOf(group)}: ${hoursWords(weekly)} instead of ${hoursWords(group.weekly.weekly)}`,
      changes: people.apart(group, 1, kind, { hours }),
    },
  ];
}

function laterStarts(people: StaffText, group: StaffGroup): StaffOption[] {
  if (!isDayGroup(group)) return [];
  const { weekly } = group.weekly;
  return LATER_HOURS.flatMap((hours) => {
    const start = clockText(dayOf(weekly).fromHour + hours);
    return withHours(people, group, `${oneOf(group)} from ${start}`, 'late', moved(weekly, hours));
  });
}

/** Half of a group earlier, the others when these leave. */
function earlyAndLate(people: StaffText, group: StaffGroup): StaffOption[] {
  if (!isDayGroup(group) || group.count < 2) return [];
  const { weekly } = group.weekly;
  const day = dayOf(weekly);
  const earlier = Math.max(0, Math.min(EARLIER_HOURS, day.fromHour - EARLIEST_START));
  const early = moved(weekly, -earlier);
  const late = moved(weekly, day.toHour - day.fromHour - earlier);
  if (!canBeWritten(early) || !canBeWritten(late)) return [];
  const lateOnes = Math.floor(group.count / 2);
  const changes: ChangeWording[] = [
    ...people.apart(group, lateOnes, 'late', { hours: hoursGroup({ ...group.weekly, weekly: late }) }),
    ...(earlier === 0
      ? []
      : people.different(group, { hours: hoursGroup({ ...group.weekly, weekly: early }) })),
  ];
  return [
    {
      name: `${group.name} early and late`,
      meaning: `${group.count - lateOnes} of ${group.name}: ${hoursWords(early)}; ${lateOnes}: ${hoursWords(late)}`,
      changes,
    },
  ];
}

/** One person when the others leave, and one in evening hours that others have already. */
function evenings(people: StaffText, group: StaffGroup): StaffOption[] {
  if (!isDayGroup(group) || group.count < 2) return [];
  const { weekly } = group.weekly;
  const day = dayOf(weekly);
  const others = people.groups.filter(
    (other) =>
      other.calendar !== group.calendar &&
      weeklyHours(other.weekly.weekly) <= LONGEST_WEEK_HOURS &&
      dayOf(other.weekly.weekly).fromHour >= NOON,
  );
  return [
    ...withHours(
      people,
      group,
      `${oneOf(group)} in the evening`,
      'evening',
      moved(weekly, day.toHour - day.fromHour),
    ),
    ...others.map((other) => ({
      name: `${oneOf(group)} in the hours of ${other.name}`,
      meaning: `${lastOf(group)}: ${hoursWords(other.weekly.weekly)} instead of ${hoursWords(weekly)}`,
      changes: people.apart(group, 1, 'moved', { hours: people.hoursOf(other) }),
    })),
  ];
}

/** Saturday morning besides, and instead of the end of Friday. */
function saturdays(people: StaffText, group: StaffGroup): StaffOption[] {
  const { weekly } = group.weekly;
  if (!isDayGroup(group) || windowsOfDay(weekly, SATURDAY).length > 0) return [];
  if (windowsOfDay(weekly, FRIDAY).length === 0) return [];
  const fromHour = SATURDAY * 24 + dayOf(weekly).fromHour;
  const morning = { fromHour, toHour: fromHour + SATURDAY_HOURS };
  return [
    ...withHours(people, group, `${oneOf(group)} on Saturday as well`, 'Saturday', [...weekly, morning]),
    ...withHours(people, group, `${oneOf(group)} on Saturday, not Friday`, 'Saturday', [
      ...withoutEndOfDay(weekly, FRIDAY, SATURDAY_HOURS),
      morning,
    ]),
  ];
}

/** One of each of two groups learns what the other can do. */
function trained(people: StaffText): StaffOption[] {
  return people.groups.flatMap((group, index) =>
    people.groups.slice(index + 1).flatMap((other): StaffOption[] => {
      const learns = (one: StaffGroup, from: StaffGroup): string[] =>
        from.skills.filter((skill) => !one.skills.includes(skill));
      const learners = [
        { group, lessons: learns(group, other) },
        { group: other, lessons: learns(other, group) },
      ].filter(({ lessons }) => lessons.length > 0);
      if (learners.length === 0) return [];
      const meaning = learners
        .map((learner) => `${lastOf(learner.group)} also: ${learner.lessons.join(', ')}`)
        .join('; ');
      return [
        {
          name:
            learners.length === 2
              ? `${oneOf(group)} and ${oneOf(other)} cross-trained`
              : `${learners.map((learner) => `${oneOf(learner.group)} trained in ${learner.lessons.join(', ')}`).join('')}`,
          meaning,
          changes: learners.flatMap((learner) =>
            people.apart(learner.group, 1, 'trained', {
              skills: [...learner.group.skills, ...learner.lessons],
            }),
          ),
        },
      ];
    }),
  );
}

function numbers(people: StaffText, group: StaffGroup): StaffOption[] {
  const { name, count } = group;
  const option = (words: string, to: number): StaffOption => ({
    name: `one ${words} of ${name}`,
    meaning: `${to} instead of ${count}`,
    changes: people.counted(group, to),
  });
  return [option('more', count + 1), ...(count > 1 ? [option('fewer', count - 1)] : [])];
}

function oneOf({ name, count }: StaffGroup): string {
  return count === 1 ? name : `one of ${name}`;
}

function lastOf({ name, count }: StaffGroup): string {
  return `${name} ${count}`;
}
