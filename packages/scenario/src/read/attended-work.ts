import type { AttendedWork, Duration } from '@buildweek/model';
import type { Fields } from '../fields.ts';
import type { ScenarioWork } from '../scenario.ts';
import { anyText, yesNo } from '../words/choice.ts';
import { plainDuration } from '../words/duration.ts';
import { wholeNumber } from '../words/numbers.ts';
import type { Wording } from '../words/wording-error.ts';

/** Stands in for a time that is missing or wrong, which has been reported. */
export const NO_TIME: Duration = { distribution: { kind: 'constant', value: 0 }, typicalHours: 0 };

/** Skill of those who run machines and stations that say nothing else. */
export const USUAL_SKILL = 'run machines';

/** A time, or `none`. */
export const durationOrNone: Wording<Duration | null> = (text) =>
  /^none$/i.test(text) ? null : plainDuration(text);

/**
 * Attended work under a key: a time, `none`, or a group of keys. What the class says stands in for a time that
 * is not given.
 *
 * @returns null for none; undefined when nothing is said of it
 */
export function readAttendedWork(fields: Fields, key: string): ScenarioWork | null | undefined {
  if (fields.node(key)?.kind !== 'map') {
    const duration = fields.read(key, durationOrNone);
    return duration === undefined || duration === null
      ? duration
      : { skill: null, persons: 1, duration, pausable: false };
  }
  const classText = fields.classText(key);
  const group = fields.group(key).withClass(classText === undefined ? {} : { takes: classText });
  return {
    skill: group.read('by', anyText) ?? null,
    persons: group.readOr('people', wholeNumber(1, '2'), '1'),
    duration: group.need('takes', plainDuration, NO_TIME, 'how long it takes', `takes: 10 min`),
    pausable: group.readOr('may pause', yesNo, 'no'),
  };
}

export function withSkill(work: ScenarioWork | null, skill: string): AttendedWork | null {
  return work === null ? null : { ...work, skill: work.skill ?? skill };
}
