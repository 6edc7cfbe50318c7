import type { EquipmentConditions, HourSpan } from '@buildweek/model';
import type { ClassTroubles } from '../classes/machine-troubles.ts';
import type { Fields } from '../fields.ts';
import { anyText } from '../words/choice.ts';
import { noticing } from '../words/noticing.ts';
import { unattendedSpans, unitedWeek } from '../words/unattended-hours.ts';
import { BREAKDOWNS, type EquipmentKind, readBreakdowns } from './read-breakdowns.ts';
import { CHORE_KEYS, readChores } from './read-chores.ts';
import { ALWAYS } from './read-hours.ts';

/**
 * What holds for a machine or station beside its work: breakdowns, what it owes, how people notice that it has
 * stopped, the hours in which it is there, and those in which it may run alone.
 *
 * @param skill of those who run it
 * @param usual what its class says of it; null: nothing
 */
export function readConditions(
  fields: Fields,
  kind: EquipmentKind,
  skill: string,
  usual: ClassTroubles | null,
): EquipmentConditions {
  const breakdowns = readBreakdowns(fields, kind, skill, usual?.breakdowns ?? []);
  const chores = CHORE_KEYS.flatMap((key) =>
    readChores(fields, key, skill, key === 'maintenance' ? (usual?.maintenance ?? {}) : {}),
  );
  refuseEqualNames(fields);
  const available = fields.readOr('available', anyText, ALWAYS);
  return {
    breakdowns,
    chores,
    noticing: fields.readOr('noticed', noticing, 'when somebody is in'),
    calendar: available === ALWAYS ? null : available,
    unattendedHours: readRunsAlone(fields),
  };
}

/** Several breakdowns or chores of one machine are told apart by name, in results too. */
function refuseEqualNames(fields: Fields): void {
  const names = new Set<string>();
  for (const key of [BREAKDOWNS, ...CHORE_KEYS]) {
    const group = fields.group(key);
    const items = fields.node(key)?.kind === 'list' ? fields.length(key) : 0;
    const groups = items === 0 ? [group] : Array.from({ length: items }, (_, index) => group.group(index));
    for (const item of groups) {
      const node = item.node('called');
      if (node?.kind !== 'scalar') continue;
      if (names.has(node.text)) {
        item.report(
          'called',
          'value',
          `"${node.text}" is there twice.`,
          'different names for what a machine suffers or owes',
          `${node.text} again`,
        );
      }
      names.add(node.text);
    }
  }
}

function readRunsAlone(fields: Fields): readonly HourSpan[] | null {
  const key = 'runs alone';
  if (fields.node(key)?.kind !== 'list') {
    const spans = fields.readOr(key, unattendedSpans, 'always');
    return spans === null ? null : unitedWeek(spans);
  }
  const listed = fields.readList(key, unattendedSpans);
  if (listed.some((spans) => spans === null || spans.length === 0) && listed.length > 1) {
    fields.report(
      key,
      'value',
      'Always and never stand alone.',
      'hours of the week',
      '[mon-thu 16:00-07:00]',
    );
  }
  return listed.some((spans) => spans === null) ? null : unitedWeek(listed.flatMap((spans) => spans ?? []));
}
