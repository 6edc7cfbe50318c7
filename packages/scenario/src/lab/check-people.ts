import type { Lab } from '@buildweek/model';
import { listed, nearest } from '../nearest.ts';
import type { Reading } from '../reading.ts';
import { Attendance } from './attendance.ts';
import type { AttendedPlace } from './attended-place.ts';
import { hoursText } from './hours-text.ts';

/**
 * Finds attended work that nobody can ever do: no one has the skill, too few are ever there together, or it may
 * not pause and is longer than any window.
 */
export function checkPeople(places: readonly AttendedPlace[], lab: Lab, reading: Reading): void {
  const skills = [...new Set(lab.people.flatMap((group) => group.skills))];
  for (const place of places) {
    const { skill, persons, pausable } = place.work;
    if (skill === '') continue;
    const attendance = new Attendance(lab.people, lab.calendars, skill);
    const path = reading.nodeAt([...place.path, 'by']) === undefined ? place.path : [...place.path, 'by'];
    if (attendance.persons < persons) {
      const nobody = attendance.persons === 0;
      reading.report(path, 'value', {
        message: nobody
          ? `Nobody can do the ${place.what}: no group of people has the skill "${skill}".`
          : `The ${place.what} needs ${persons} people with the skill "${skill}", and there ${attendance.persons === 1 ? 'is one' : `are ${attendance.persons}`}.`,
        found: skill,
        expected: nobody
          ? `a skill that somebody has: ${listed(skills, 12)}`
          : `at least ${persons} people with the skill`,
        write: nobody
          ? (nearest(skill, skills) ??
            `"${skill}" into the skills of a group, or "by:" with a skill that is there`)
          : `people: ${attendance.persons}, or more people with the skill`,
      });
      continue;
    }
    const longest = attendance.longestHours(persons);
    if (longest === 0) {
      reading.report(path, 'value', {
        message: `Nobody can do the ${place.what}: ${persons === 1 ? `those with the skill "${skill}" never work` : `${persons} people with the skill "${skill}" are never there together`}.`,
        found: skill,
        expected: 'hours in which they are there',
        write: 'hours for these people that have windows',
      });
      continue;
    }
    const needed = place.work.duration.typicalHours * place.most;
    if (pausable || needed <= longest + 1e-9) continue;
    reading.report(place.path, 'key', {
      message:
        `The ${place.what} never fits into a shift: ${place.because === '' ? 'it typically takes' : `${place.because} it typically takes`} ` +
        `${hoursText(needed)}, and the longest stretch with ${persons === 1 ? 'somebody' : `${persons} people`} there is ${hoursText(longest)}.`,
      found: hoursText(needed),
      expected: `at most ${hoursText(longest)}, or work that may pause`,
      write: 'may pause: yes',
    });
  }
}
