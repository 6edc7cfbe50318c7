import { readYaml } from '../source/read-yaml.ts';
import { entryOf, type SourceEntry, type SourceNode } from '../source/source-node.ts';
import { SourceText } from '../source/source-text.ts';
import { changeScenario } from './change-scenario.ts';
import { ChangeError } from './change-wording.ts';

/** A key of a group with its new value, and a comment that stands behind it. */
export interface NotedValue {
  readonly key: string;
  readonly value: string;
  /** One line, without the `#`. */
  readonly note: string;
}

const STEP = '  ';

/**
 * The text of a scenario with values of one named group changed, each on a line of its own with a note behind it. Other
 * keys of the group stay as they were written, below the changed ones; the rest of the text stays line by line.
 *
 * @param section such as `demand`
 * @param name of the group in it
 * @throws ChangeError when there is no such group
 */
export function changeGroup(
  text: string,
  section: string,
  name: string,
  values: readonly NotedValue[],
): string {
  const { root } = readYaml(new SourceText('scenario', text));
  const groups = root === null ? undefined : entryOf(root, section)?.node;
  if (groups?.kind === 'map' && text[groups.span.start] === '{') {
    return changeGroup(onLines(text, groups), section, name, values);
  }
  const entry = entryOf(groups, name);
  if (entry === undefined) {
    throw new ChangeError(`There is no "${name}" under ${section}.`, 'buildweek check FILE');
  }
  const { node, keySpan } = entry;
  const kept =
    node.kind === 'map' ? node.entries.filter(({ key }) => !values.some((one) => one.key === key)) : [];
  const first = node.kind === 'map' ? node.entries[0] : undefined;
  const isBlock = first !== undefined && text[node.span.start] !== '{';
  const indent = isBlock ? indentAt(text, first.keySpan.start) : `${indentAt(text, keySpan.start)}${STEP}`;
  const lines = [
    ...values.map(({ key, value, note }) => `${indent}${key}: ${value} # ${note}`),
    ...kept.map((one) => `${indent}${keptText(text, one)}`),
  ];
  // What stands behind the colon of the name up to the end of the group is written anew.
  const end = node.kind === 'empty' ? keySpan.end + 1 : endOfLine(text, node.span.end);
  const colon = text.indexOf(':', keySpan.end);
  return `${text.slice(0, colon + 1)}\n${lines.join('\n')}${text.slice(end)}`;
}

/**
 * The text of a scenario with one value changed and a note at the end of the line on which it stands.
 *
 * @param path keys from the top
 * @throws ChangeError when a place is not there
 */
export function changeNoted(text: string, path: readonly string[], value: string, note: string): string {
  const changed = changeScenario(text, [{ path, value, wording: `${path.join(' / ')}: ${value}` }]);
  let { root: node } = readYaml(new SourceText('scenario', changed));
  for (const key of path) node = entryOf(node ?? undefined, key)?.node ?? null;
  if (node === null) throw new ChangeError(`There is no ${path.join(' / ')}.`, 'buildweek check FILE');
  const end = endOfLine(changed, node.span.end);
  const line = changed.slice(node.span.end, end);
  const mark = line.includes('#') ? '; ' : ' # ';
  return `${changed.slice(0, end).trimEnd()}${mark}${note}${changed.slice(end)}`;
}

/** The text with groups that stand in braces each on a line of its own, so that notes can stand behind values. */
function onLines(text: string, { span, entries }: Extract<SourceNode, { kind: 'map' }>): string {
  const lines = entries.map((entry) => `${STEP}${keptText(text, entry)}`);
  return `${text.slice(0, span.start).trimEnd()}\n${lines.join('\n')}${text.slice(span.end)}`;
}

/** The key and its value as they stand; a block of several lines keeps its own indents. */
function keptText(text: string, { keySpan, node }: SourceEntry): string {
  const end = node.kind === 'empty' ? keySpan.end + 1 : node.span.end;
  return text.slice(keySpan.start, end).trimEnd();
}

/** The end of the line on which a group ends, without what stands behind it as a comment. */
function endOfLine(text: string, at: number): number {
  const trimmed = text.slice(0, at).trimEnd().length;
  const end = text.indexOf('\n', trimmed);
  return end < 0 ? text.length : end;
}

function indentAt(text: string, at: number): string {
  return ' '.repeat(at - (text.lastIndexOf('\n', at - 1) + 1));
}
