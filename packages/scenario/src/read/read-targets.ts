import type { Fields } from '../fields.ts';
import type { ScenarioTarget } from '../scenario.ts';
import { clockTime } from '../words/dates.ts';
import { target } from '../words/target.ts';

/** A list of sentences, or one sentence in its place. What is wrong is reported and left out. */
export function readTargets(fields: Fields): ScenarioTarget[] {
  const node = fields.node('targets');
  if (node === undefined) return [];
  const cutOffHour = fields.read('cut-off', clockTime) ?? null;
  if (node.kind !== 'list') {
    const worded = fields.read('targets', target);
    return worded === undefined ? [] : [{ ...worded, path: ['targets'], cutOffHour }];
  }
  const list = fields.group('targets');
  return node.items.flatMap((_, index): ScenarioTarget[] => {
    const worded = list.read(index, target);
    return worded === undefined ? [] : [{ ...worded, path: list.pathOf(index), cutOffHour }];
  });
}
