import type { Lab } from '@buildweek/model';
import { listed, nearest } from '../nearest.ts';
import type { Reading } from '../reading.ts';
import type { SourcePath } from '../source/source-node.ts';
import { Attendance } from './attendance.ts';
import type { AttendedPlace } from './attended-place.ts';
import { hoursText } from './hours-text.ts';
import { skillPath } from './names.ts';

/**
 * Finds attended work that nobody can ever do: no one has the skill, too few are ever there together, or it may
 * not pause and is longer than any window.
 */
export function checkPeople(places: readonly AttendedPlace[], lab: Lab, reading: Reading): void {
  const told = new Set<string>();
  const toldGroups = new Set<string>();
  for (const place of places) {
    const { skill, persons, pausable } = place.work;
    if (skill === '') continue;
    const attendance = new Attendance(lab.people, lab.calendars, skill);
    const path = reading.nodeAt([...place.path, 'by']) === undefined ? place.path : [...place.path, 'by'];
    if (attendance.persons === 0) {
      if (told.has(skill)) continue;
      told.add(skill);
      const absent = lab.people.find((group) => group.skills.includes(skill));
      if (absent === undefined) reportNobody(place, path, places, lab, reading);
      else if (!toldGroups.has(absent.name)) {
        toldGroups.add(absent.name);
        reportAbsent(absent.name, place, reading);
      }
      continue;
    }
    if (attendance.persons < persons) {
      reading.report(path, 'value', {
        message: `The ${place.what} needs ${persons} people with the skill "${skill}", and there ${attendance.persons === 1 ? 'is one' : `are ${attendance.persons}`}.`,
        found: skill,
        expected: `at least ${persons} people with the skill`,
        write: `people: ${attendance.persons}, or more people with the skill`,
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
    if (pausable || needed <= longest + 1e-9 || reading.isInDoubt(place.path, 'may pause')) continue;
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

/** A group of nobody, who alone could do it: once for all that it could do. */
function reportAbsent(group: string, { what, work }: AttendedPlace, reading: Reading): void {
  reading.report(['people', group, 'count'], 'value', {
    message: `Nobody can do the ${what}: there is nobody of "${group}", and no one else has the skill "${work.skill}".`,
    found: '0',
    expected: 'at least 1, or another group with the skill',
    write: '1',
  });
}

/** A skill that nobody has: once for all work that asks for it, and with the people where the slip is theirs. */
function reportNobody(
  place: AttendedPlace,
  path: SourcePath,
  places: readonly AttendedPlace[],
  lab: Lab,
  reading: Reading,
): void {
  const { skill } = place.work;
  const skills = [...new Set(lab.people.flatMap((group) => group.skills))];
  const meant = nearest(skill, skills);
  const askingFor = (candidate: string | null) => places.filter(({ work }) => work.skill === candidate);
  const owner = lab.people.find((group) => meant !== null && group.skills.includes(meant));
  const message = `Nobody can do the ${place.what}: no group of people has the skill "${skill}".`;
  if (meant !== null && owner !== undefined && askingFor(skill).length > 1 && askingFor(meant).length === 0) {
    reading.report(skillPath(reading, owner.name, meant), 'value', {
      message,
      found: meant,
      expected: `the skill as the work asks for it: ${skill}`,
      write: skill,
    });
    return;
  }
  reading.report(path, 'value', {
    message,
    found: skill,
    expected: `a skill that somebody has: ${listed(skills, 12)}`,
    write: meant ?? `"${skill}" into the skills of a group, or "by:" with a skill that is there`,
  });
}
