import type { Closing, Floor } from './floor.ts';
import { isOnDuty } from './floor.ts';

const LONG_GAP = 120;

/**
 * The next minute after now at which the last person with a skill goes, with nobody coming for more than two
 * hours. Null when that never happens.
 */
export function nextClosing(floor: Floor, skill: string): Closing | null {
  const known = floor.closings.get(skill);
  if (known !== undefined && (known === null || known.closing > floor.now)) return known;
  const next = findClosing(floor, skill);
  floor.closings.set(skill, next);
  return next;
}

function findClosing(floor: Floor, skill: string): Closing | null {
  const somebody = (minute: number): boolean =>
    floor.people.some((person) => person.group.skills.includes(skill) && isOnDuty(person, minute));
  const horizon = Math.max(0, ...floor.people.map((person) => person.windowEnds.length));
  for (let minute = floor.now + 1; minute < horizon; minute++) {
    if (!somebody(minute - 1) || somebody(minute)) continue;
    let opens = minute;
    while (opens < horizon && !somebody(opens)) opens++;
    if (opens - minute > LONG_GAP) return { closing: minute, opens };
    minute = opens;
  }
  return null;
}
