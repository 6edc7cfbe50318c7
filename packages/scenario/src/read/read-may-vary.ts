import type { Variation } from '@buildweek/model';
import type { Fields } from '../fields.ts';
import { listed, nearest } from '../nearest.ts';
import { sectionsWith } from '../source/named-sections.ts';
import { entryOf, type SourceNode } from '../source/source-node.ts';
import { type RangeOfChoice, rangeOfChoice } from '../words/range-of-choice.ts';

const COUNTED = ['machines', 'stations', 'people', 'carriers'] as const;
type Counted = (typeof COUNTED)[number];

/** More plans than this are no question that a search could answer. */
const MOST_PLANS = 20_000;

/** What may be chosen when a plan is looked for, in the order of the file. */
export function readMayVary(fields: Fields): Variation[] {
  const group = fields.group('may vary');
  const variations = group.names().flatMap((key): Variation[] => {
    const choice = group.read(key, rangeOfChoice);
    if (choice === undefined) return [];
    const place = key.split('/').map((step) => step.trim());
    const variation =
      choice.kind === 'count'
        ? countOf(fields, group, key, place, choice)
        : wordingOf(fields, group, key, place, choice);
    return variation === null ? [] : [variation];
  });
  const plans = variations.reduce((product, one) => product * sizeOf(one), 1);
  const [first] = group.names();
  if (plans > MOST_PLANS && first !== undefined) {
    group.report(
      first,
      'key',
      `These choices make ${plans} plans.`,
      `at most ${MOST_PLANS} plans: the ends of all ranges multiplied`,
      'narrower ranges, or fewer of them',
    );
  }
  return variations;
}

function sizeOf(variation: Variation): number {
  return variation.kind === 'count' ? variation.to - variation.from + 1 : variation.options.length;
}

/** A count, named by its group, with the section before it or without, and with the word `count` or without. */
function countOf(
  fields: Fields,
  group: Fields,
  key: string,
  place: readonly string[],
  { from, to }: Extract<RangeOfChoice, { kind: 'count' }>,
): Variation | null {
  const steps = place.at(-1) === 'count' ? place.slice(0, -1) : place;
  const sections = COUNTED.filter((section) => steps.length === 1 || section === steps[0]);
  const name = steps.at(-1) ?? '';
  const found = sections.filter((section) => fields.names(section).includes(name));
  const [of] = found;
  if (of === undefined || steps.length > 2) {
    const names = COUNTED.flatMap((section) => fields.names(section));
    group.report(
      key,
      'key',
      `There are no machines, stations, people or carriers called "${key}".`,
      listed(names, 12),
      nearest(name, names) ?? 'one of these names',
    );
    return null;
  }
  if (found.length > 1) {
    group.report(
      key,
      'key',
      `"${name}" is there more than once: ${listed(found)}.`,
      'the section before the name',
      found.map((section) => `${section} / ${name}`).join(' or '),
    );
    return null;
  }
  const present = presentCount(fields, of, name);
  if (present < from || present > to) {
    group.report(
      key,
      'value',
      `The scenario has ${present} of "${name}", which is not in the range.`,
      'a range that holds the present number, so that the plan of today is among the plans',
      `${Math.min(from, present)} to ${Math.max(to, present)}`,
    );
    return null;
  }
  return { kind: 'count', of, group: name, from, to };
}

function presentCount(fields: Fields, section: Counted, name: string): number {
  const path = section === 'carriers' ? [section, name] : [section, name, 'count'];
  const node = fields.reading.nodeAt(path);
  return node?.kind === 'scalar' ? Number(node.text) : 1;
}

/** Another wording of a value that stands in the file, at a place that may begin with a name that is there once. */
function wordingOf(
  fields: Fields,
  group: Fields,
  key: string,
  asWritten: readonly string[],
  { options }: Extract<RangeOfChoice, { kind: 'wording' }>,
): Variation | null {
  const { root } = fields.reading;
  const [first = ''] = asWritten;
  const sections = entryOf(root, first) === undefined ? sectionsWith(root, first) : [];
  const place = sections.length === 1 ? [...sections, ...asWritten] : asWritten;
  let node: SourceNode | undefined = root;
  for (const step of place) node = step === '' ? undefined : entryOf(node, step)?.node;
  if (node?.kind !== 'scalar') {
    group.report(
      key,
      'key',
      node === undefined
        ? `Nothing in this file stands at "${key}".`
        : `"${key}" is a group of keys; only a single value can be worded otherwise.`,
      'the keys from the top of the file to a value, with strokes between them',
      'people / technicians / hours: day or evening',
    );
    return null;
  }
  if (!options.includes(node.text)) {
    group.report(
      key,
      'value',
      `The present value, "${node.text}", is not among the options.`,
      'options that hold the present value, so that the plan of today is among the plans',
      [node.text, ...options].join(' or '),
    );
    return null;
  }
  return { kind: 'wording', path: place, options };
}
