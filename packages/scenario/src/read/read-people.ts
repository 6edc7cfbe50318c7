import type { Fields } from '../fields.ts';
import type { ScenarioCalendar, ScenarioPeople } from '../scenario.ts';
import { anyText } from '../words/choice.ts';
import { plainDuration } from '../words/duration.ts';
import { MOST_ALIKE, share, wholeNumber } from '../words/numbers.ts';
import { readAbsence } from './read-absence.ts';
import { ALWAYS, isInPlace, readCalendar } from './read-hours.ts';

/** Groups of people, and the hours that some of them describe in place. */
export function readPeople(
  fields: Fields,
  calendars: readonly ScenarioCalendar[],
): { people: ScenarioPeople[]; inPlace: ScenarioCalendar[] } {
  const inPlace: ScenarioCalendar[] = [];
  const usual = calendars[0]?.name ?? ALWAYS;
  const people = fields.names('people').map((name): ScenarioPeople => {
    const group = fields.group('people').group(name);
    let calendar = usual;
    if (isInPlace(group.node('hours'))) {
      calendar = `hours of ${name}`;
      inPlace.push(readCalendar(group.group('hours'), calendar));
    } else {
      calendar = group.read('hours', anyText, usual) ?? usual;
    }
    if (!group.has('skills'))
      group.missing('skills', 'what they can do', 'skills: [run machines, hand work]');
    const skills = [...new Set(group.readList('skills', anyText))];
    if (group.node('skills')?.kind === 'list' && skills.length === 0 && group.length('skills') === 0) {
      group.report(
        'skills',
        'value',
        `"${name}" can do nothing.`,
        'at least one skill',
        'skills: [run machines]',
      );
    }
    const count = group.readOr('count', wholeNumber(0, '2', MOST_ALIKE), '1');
    return {
      name,
      count,
      calendar,
      skills,
      otherDutiesShare: group.readOr('other duties', share(100, true), '0 %'),
      graceHours: group.readOr('grace', plainDuration, '0 min').typicalHours,
      ...readAbsence(group, name, count),
    };
  });
  return { people, inPlace };
}
