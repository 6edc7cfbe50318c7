import type { Fields } from '../fields.ts';
import type { ScenarioTarget } from '../scenario.ts';
import { clockTime } from '../words/dates.ts';
import type { Currency } from '../words/money.ts';
import { target } from '../words/target.ts';

/** Any currency: that there is none is told where amounts are looked at. */
const ANY: Currency = { code: '', line: 0 };

/** A list of sentences, or one sentence in its place. What is wrong is reported and left out. */
export function readTargets(fields: Fields, currency: Currency | undefined): ScenarioTarget[] {
  const node = fields.node('targets');
  if (node === undefined) return [];
  const sentence = target(currency ?? ANY);
  const cutOffHour = fields.read('cut-off', clockTime) ?? null;
  if (node.kind !== 'list') {
    const worded = fields.read('targets', sentence);
    return worded === undefined ? [] : [{ ...worded, path: ['targets'], cutOffHour }];
  }
  const list = fields.group('targets');
  return node.items.flatMap((_, index): ScenarioTarget[] => {
    const worded = list.read(index, sentence);
    return worded === undefined ? [] : [{ ...worded, path: list.pathOf(index), cutOffHour }];
  });
}
