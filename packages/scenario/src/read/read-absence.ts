import type { Fields } from '../fields.ts';
import type { ScenarioLeave, ScenarioPeople } from '../scenario.ts';
import { describeNode, type SourceNode } from '../source/source-node.ts';
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
  // How many there are is not known where that is wrong itself, which has been reported.
  const isCounted = !group.reading.isInDoubt(group.path, 'count');
  if (node?.kind === 'map') {
    const persons = group.group(KEY);
    return persons.names().flatMap((key) => {
      const person = personNamed(key, name);
      if (person >= 1 && (person <= count || !isCounted)) return spansOf(persons, key, person);
      const isNumber = person > count;
      group.reading.report(persons.pathOf(key), 'key', {
        // The number of people is what is tried out most: their leave must not stand in the way.
        severity: isNumber ? 'warning' : 'error',
        message: `"${name}" has no person ${key}${isNumber ? ': this leave has no effect' : ''}.`,
        found: key,
        expected: count === 1 ? '1, the only person of the group' : `a number from 1 to ${count}`,
        write: isNumber
          ? `count: ${person} at "${name}", or the leave without ${key}`
          : '1: 2027-04-05 to 2027-04-16',
      });
      return [];
    });
  }
  if (node === undefined) {
    if (!group.has(KEY)) group.assume(KEY, 'none');
    return [];
  }
  if (count > 1 && isCounted && node.kind !== 'empty') {
    const dates = node.kind === 'scalar' ? node.text : listText(node.items);
    group.reading.report(group.pathOf(KEY), 'value', {
      severity: 'warning',
      message: `"${name}" are ${count} persons, and this does not say whose leave it is: it is taken for that of person 1.`,
      found: dates,
      expected: 'the number of the person with the dates',
      write: `leave: { 1: ${dates} }`,
    });
  }
  return spansOf(group, KEY, 1);
}

function listText(items: readonly SourceNode[]): string {
  return `[${items.map(describeNode).join(', ')}]`;
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
