import { type ChangeWording, placeText } from '../change/change-wording.ts';
import { flowGroup, flowKey, flowList, flowText } from '../change/flow-text.ts';
import { ALWAYS, ALWAYS_OPEN } from '../read/read-hours.ts';
import type { Scenario, ScenarioCalendar, ScenarioLeave, ScenarioPeople } from '../scenario.ts';
import { readYaml } from '../source/read-yaml.ts';
import { entryOf, type SourceNode } from '../source/source-node.ts';
import { SourceText } from '../source/source-text.ts';
import { dateText } from '../words/dates.ts';
import { hoursGroup } from './week-hours.ts';

/** A group of people as it stands in a file, with its hours. */
export interface StaffGroup extends ScenarioPeople {
  readonly weekly: ScenarioCalendar;
  /** Whether its hours have a name that other groups can refer to. */
  readonly hoursAreNamed: boolean;
  readonly node: SourceNode;
}

/** What becomes different for those who are moved. */
export interface Difference {
  readonly hours?: string;
  readonly skills?: readonly string[];
}

/** The people of a scenario, to be moved about in its text. */
export class StaffText {
  readonly groups: readonly StaffGroup[];
  private readonly text: string;
  private readonly taken: readonly string[];

  constructor(scenario: Scenario, text: string) {
    this.text = text;
    const { root } = readYaml(new SourceText('scenario', text));
    const people = root === null ? undefined : entryOf(root, 'people')?.node;
    const named = root === null ? undefined : entryOf(root, 'hours')?.node;
    this.taken = scenario.people.map(({ name }) => name);
    this.groups = scenario.people.flatMap((group) => {
      const node = entryOf(people, group.name)?.node;
      const isAlways = group.calendar === ALWAYS;
      const weekly = isAlways ? ALWAYS_OPEN : scenario.calendars.find(({ name }) => name === group.calendar);
      const hoursAreNamed = isAlways || entryOf(named, group.calendar) !== undefined;
      return node === undefined || weekly === undefined ? [] : [{ ...group, weekly, hoursAreNamed, node }];
    });
  }

  /** Another number of people. */
  counted(group: StaffGroup, count: number): ChangeWording[] {
    return [change(['people', group.name, 'count'], String(count))];
  }

  /** Something else for all of a group. */
  different(group: StaffGroup, { hours, skills }: Difference): ChangeWording[] {
    return [
      ...(hours === undefined ? [] : [change(['people', group.name, 'hours'], hours)]),
      ...(skills === undefined ? [] : [change(['people', group.name, 'skills'], flowList(skills))]),
    ];
  }

  /**
   * Something else for the last so many of a group: they become a group of their own, with everything else as it was.
   *
   * @param kind first word of the name of the new group, as `late`
   */
  apart(group: StaffGroup, moved: number, kind: string, difference: Difference): ChangeWording[] {
    if (moved >= group.count) return this.different(group, difference);
    const stay = group.count - moved;
    const staying = group.leave.filter(({ person }) => person <= stay);
    const going = group.leave
      .filter(({ person }) => person > stay)
      .map((leave) => ({ ...leave, person: leave.person - stay }));
    const kept = group.node.kind === 'map' ? group.node.entries : [];
    const entries: [string, string][] = [
      ['count', String(moved)],
      ['hours', difference.hours ?? this.hoursOf(group)],
      ['skills', flowList(difference.skills ?? group.skills)],
      ...kept
        .filter(({ key }) => !['count', 'hours', 'skills', 'leave'].includes(key))
        .map(({ key, node }): [string, string] => [key, flowText(node, this.text)]),
      ...(going.length === 0 ? [] : [['leave', leaveText(going)] as [string, string]]),
    ];
    return [
      ...this.counted(group, stay),
      ...(going.length === 0 ? [] : [change(['people', group.name, 'leave'], leaveText(staying))]),
      change(['people', flowKey(this.freeName(`${kind} ${group.name}`))], flowGroup(entries)),
    ];
  }

  /** Hours that others can have too: their name, or the windows themselves. */
  hoursOf(group: StaffGroup): string {
    return group.hoursAreNamed ? group.calendar : hoursGroup(group.weekly);
  }

  private freeName(wanted: string): string {
    let name = wanted;
    for (let number = 2; this.taken.includes(name); number++) name = `${wanted} ${number}`;
    return name;
  }
}

function change(path: readonly string[], value: string): ChangeWording {
  return { wording: `${placeText(path)}: ${value}`, path, value };
}

function leaveText(leave: readonly ScenarioLeave[]): string {
  const persons = [...new Set(leave.map(({ person }) => person))];
  return flowGroup(
    persons.map((person) => [
      String(person),
      flowList(
        leave
          .filter((one) => one.person === person)
          .map(({ firstDay, lastDay }) =>
            firstDay === lastDay ? dateText(firstDay) : `${dateText(firstDay)} to ${dateText(lastDay)}`,
          ),
      ),
    ]),
  );
}
