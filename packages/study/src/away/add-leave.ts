import { HOURS_PER_WEEK } from '@buildweek/core';
import type { HourSpan, Lab, PeopleGroup } from '@buildweek/model';

/**
 * The lab with one person of a group away for whole weeks: the first who has no leave then anyway.
 *
 * @param group name of a people group
 * @param fromWeek first week of the plan, from 1
 * @param weeks how many
 */
export function withLeave(lab: Lab, group: string, fromWeek: number, weeks: number): Lab {
  const span: HourSpan = {
    fromHour: (fromWeek - 1) * HOURS_PER_WEEK,
    toHour: (fromWeek - 1 + weeks) * HOURS_PER_WEEK,
  };
  return {
    ...lab,
    people: lab.people.map((found) =>
      found.name === group
        ? { ...found, leave: [...found.leave, { person: personThere(found, span), ...span }] }
        : found,
    ),
  };
}

function personThere({ count, leave }: PeopleGroup, { fromHour, toHour }: HourSpan): number {
  for (let person = 1; person <= count; person++) {
    const isAway = leave.some(
      (one) => one.person === person && one.fromHour < toHour && fromHour < one.toHour,
    );
    if (!isAway) return person;
  }
  return 1;
}
