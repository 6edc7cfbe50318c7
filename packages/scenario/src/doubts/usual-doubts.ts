import type { Doubt, Lab } from '@buildweek/model';
import { effectOf } from './doubt-effect.ts';
import { doubtSubject } from './doubt-name.ts';

/**
 * How far what is typed into a first scenario is usually off. Common practice, no source: people forget work rather
 * than invent it, print times come from the machine, and rates of rare things rest on few cases.
 */
const USUAL: readonly (readonly [name: string, low: number, high: number])[] = [
  ['demand', 0.8, 1.2],
  ['times of attended work', 0.8, 1.3],
  ['print times', 0.9, 1.15],
  ['breakdowns', 0.5, 2],
  ['failed builds', 0.5, 2],
  ['rejects', 0.5, 2],
];

/** What is taken for doubtful where a scenario does not say: that of it which the lab has. */
export function usualDoubts(lab: Lab): Doubt[] {
  return USUAL.flatMap(([name, low, high]) => {
    const about = doubtSubject(name, lab);
    const { changes, largestShare } = effectOf(about, lab);
    return changes && largestShare * high < 1 ? [{ name, about, low, typical: 1, high }] : [];
  });
}
