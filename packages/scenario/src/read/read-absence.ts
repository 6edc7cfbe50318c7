import type { Fields } from '../fields.ts';
import type { ScenarioLeave, ScenarioPeople } from '../scenario.ts';
import { absence } from '../words/absence.ts';
import { dateSpan } from '../words/dates.ts';

const KEY = 'leave';

/**
 * When people of a group are not there: leave of single persons, and absence by chance.
 *
 * @param group the keys of the group
 * @param count how many persons it has
 */
export function readAbsence(
  group: Fields,
  name: string,
  count: number,
): Pick<ScenarioPeople, 'leave' | 'absence'> {
  return { leave: readLeave(group, name, count), absence: group.readOr('absent', absence, 'never') };
}

function readLeave(group: Fields, name: string, count: number): ScenarioLeave[] {
  const node = group.node(KEY);
  if (node?.kind === 'map') {
    const persons = group.group(KEY);
    return persons.names().flatMap((key) => {
      const person = personNamed(key, name);
      if (Number.isInteger(person) && person >= 1 && person <= count) return spansOf(persons, key, person);
      persons.report(
        key,
        'key',
        `"${name}" has no person ${key}.`,
        count === 1 ? '1, the only person of the group' : `a number from 1 to ${count}`,
        '1: 2027-04-05 to 2027-04-16',
      );
      return [];
    });
  }
  if (node === undefined) {
    if (!group.has(KEY)) group.assume(KEY, 'none');
    return [];
  }
  if (count > 1) {
    group.report(
      KEY,
      'value',
      `"${name}" are ${count} persons, and this does not say whose leave it is.`,
      'the number of the person with the dates',
      `{ 1: ${node.kind === 'scalar' ? node.text : '2027-04-05 to 2027-04-16'} }`,
    );
    return [];
  }
  return spansOf(group, KEY, 1);
}

/** `2`, or the name of the individual: `technicians 2`. */
function personNamed(key: string, group: string): number {
  const number = key.startsWith(`${group} `) ? key.slice(group.length + 1) : key;
  return /^\d+$/.test(number) ? Number(number) : Number.NaN;
}

function spansOf(fields: Fields, key: string, person: number): ScenarioLeave[] {
  return fields.readList(key, dateSpan).flatMap((days) => {
    const [firstDay] = days;
    const lastDay = days.at(-1);
    return firstDay === undefined || lastDay === undefined ? [] : [{ person, firstDay, lastDay }];
  });
}
