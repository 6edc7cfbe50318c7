import type { Chore } from '@buildweek/model';
import type { ClassTexts, Fields } from '../fields.ts';
import { anyText, choice, yesNo } from '../words/choice.ts';
import { plainDuration } from '../words/duration.ts';
import { wholeNumber } from '../words/numbers.ts';
import { recurrence } from '../words/recurrence.ts';
import { NO_TIME } from './attended-work.ts';

export const CHORE_KEYS = ['maintenance', 'test prints'] as const;
type ChoreKey = (typeof CHORE_KEYS)[number];

const EXAMPLES: Readonly<Record<ChoreKey, { every: string; takes: string }>> = {
  maintenance: { every: 'every: 200 h of running', takes: 'takes: 1 h' },
  'test prints': { every: 'every: 4 weeks by the clock', takes: 'takes: 3 h' },
};

/**
 * What a machine or station owes from time to time: a list, one group of keys, or `none`.
 *
 * @param skill of those who do it when nothing else is said
 * @param usual what the class says: `every` and `takes`; empty: nothing
 */
export function readChores(fields: Fields, key: ChoreKey, skill: string, usual: ClassTexts): Chore[] {
  const node = fields.node(key);
  const group = fields.group(key);
  if (node?.kind === 'list') {
    return node.items.flatMap((_, index) => readChore(group.group(index), key, skill, `${key} ${index + 1}`));
  }
  if (node?.kind === 'scalar') {
    fields.read(key, choice('none'));
    return [];
  }
  if (node === undefined && (fields.has(key) || Object.keys(usual).length === 0)) {
    if (!fields.has(key)) fields.assume(key, 'none');
    return [];
  }
  return readChore(group.withClass(usual), key, skill, key);
}

function readChore(fields: Fields, key: ChoreKey, skill: string, name: string): Chore[] {
  const example = EXAMPLES[key];
  const called = fields.read('called', anyText) ?? name;
  const every = fields.need('every', recurrence, undefined, 'how often it comes', example.every);
  const takes = fields.need('takes', plainDuration, NO_TIME, 'how long it takes', example.takes);
  const usuallyAttended = key === 'maintenance' || fields.has('by');
  const attended = fields.readOr('attended', yesNo, usuallyAttended ? 'yes' : 'no');
  const kind = key === 'maintenance' ? 'maintenance' : 'test print';
  if (!attended) {
    for (const other of ['by', 'people', 'may pause']) {
      fields.refuse(other, 'nobody stays while it runs.', 'attended: yes, and by whom');
    }
  }
  const work = attended
    ? {
        skill: fields.readOr('by', anyText, skill),
        persons: fields.readOr('people', wholeNumber(1, '2'), '1'),
        duration: takes,
        pausable: fields.readOr('may pause', yesNo, 'yes'),
      }
    : null;
  if (every === undefined) return [];
  return [
    {
      name: called,
      kind,
      by: every.by,
      every: every.distribution,
      work,
      duration: attended ? null : takes,
    },
  ];
}
