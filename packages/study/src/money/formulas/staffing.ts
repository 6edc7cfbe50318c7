import { checkAboveZero, checkNotNegative } from './checks.ts';

/**
 * Full-time people that it takes to have posts filled for so many hours of the week.
 * Source: elementary.
 * @param postHours hours of the week times posts, as 168 for one post day and night
 * @param weekHours hours that one person works in a week
 * @param absentShare share of working days on which a person is on leave or ill, 0 to below 1
 * @throws RangeError for a negative number of hours, or a share that cannot be
 */
export function fullTimePeople(postHours: number, weekHours: number, absentShare = 0): number {
  checkNotNegative('number of hours to fill', postHours);
  checkAboveZero('working week', weekHours);
  if (!(absentShare >= 0 && absentShare < 1)) {
    throw new RangeError(`The share of absence must be from 0 to below 1, not ${absentShare}`);
  }
  return postHours / weekHours / (1 - absentShare);
}
