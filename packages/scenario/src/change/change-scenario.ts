import { listed, nearest } from '../nearest.ts';
import { scenarioSchema } from '../schema/scenario-schema.ts';
import { NAMED_SECTIONS, sectionsWith } from '../source/named-sections.ts';
import { readYaml } from '../source/read-yaml.ts';
import { entryOf, type SourceNode, type SourceSpan } from '../source/source-node.ts';
import { SourceText } from '../source/source-text.ts';
import { ChangeError, type ChangeWording } from './change-wording.ts';

/**
 * The text of a scenario with values changed; everything else stays as it was written, line by line. The text is not
 * checked: whoever reads it finds what does not go together, at its line.
 *
 * @param text a scenario that can be read
 * @throws ChangeError when a place is not there, or is not clear
 */
export function changeScenario(text: string, changes: readonly ChangeWording[]): string {
  return changes.reduce(changeOne, text);
}

function changeOne(text: string, { path, value }: ChangeWording): string {
  const { root } = readYaml(new SourceText('scenario', text));
  if (root === null) throw new ChangeError('The scenario cannot be read.', 'buildweek check FILE');
  const steps = fromTheTop(root, path);
  let node: SourceNode = root;
  for (const [position, step] of steps.entries()) {
    const next = child(node, step);
    if (next === undefined) {
      checkName(node, steps, position);
      return insert(text, node, steps.slice(position), value);
    }
    node = next;
  }
  return node.kind === 'empty' ? fill(text, node.span, value) : replace(text, node.span, value);
}

/** Lets a place begin with a name that is there once. */
function fromTheTop(root: SourceNode, path: readonly string[]): readonly string[] {
  const [first = ''] = path;
  // A section that the file has not got is no slip.
  if (root.kind !== 'map' || entryOf(root, first) !== undefined || first in scenarioSchema.shape) return path;
  const sections = sectionsWith(root, first);
  if (sections.length === 1) return [sections[0] ?? '', ...path];
  const rest = path.join(' / ');
  if (sections.length > 1) {
    const choices = sections.map((section) => `${section} / ${rest}`);
    throw new ChangeError(`"${first}" is there more than once: ${listed(sections)}.`, choices.join(' or '));
  }
  const names = [...new Set(NAMED_SECTIONS.flatMap((section) => keysOf(entryOf(root, section)?.node)))];
  if (path.length === 1) {
    // A stroke forgotten: "resin count".
    const begun = names.find((name) => first.startsWith(`${name} `));
    if (begun === undefined) return path;
    throw new ChangeError(
      `The scenario has nothing that is called "${first}".`,
      `${begun} / ${first.slice(begun.length + 1).trim()}`,
    );
  }
  const meant = nearest(first, [...names, ...keysOf(root)]);
  throw new ChangeError(
    `The scenario has nothing that is called "${first}".${meant === null ? ` It has ${listed(names, 12)}.` : ''}`,
    [meant ?? names[0] ?? 'people', ...path.slice(1)].join(' / '),
  );
}

/** A name that is not there is a slip, not a wish for something new: new things need more than one value. */
function checkName(node: SourceNode, steps: readonly string[], position: number): void {
  const [section = ''] = steps;
  const step = steps[position] ?? '';
  const isName = position === 1 && NAMED_SECTIONS.includes(section) && steps.length > 2;
  if (!isName && node.kind !== 'list') return;
  const names = node.kind === 'list' ? node.items.flatMap((item) => keysOf(item)) : keysOf(node);
  const meant = nearest(step, names) ?? listed(names, 12);
  throw new ChangeError(
    `There is no "${step}" under ${steps.slice(0, position).join(' / ')}.`,
    [...steps.slice(0, position), meant, ...steps.slice(position + 1)].join(' / '),
  );
}

function keysOf(node: SourceNode | undefined): string[] {
  return node?.kind === 'map' ? node.entries.map(({ key }) => key) : [];
}

/** The value under a key; in a list the item of that name, as stages have one, or of that number from 1. */
function child(node: SourceNode, step: string): SourceNode | undefined {
  if (node.kind === 'map') return entryOf(node, step)?.node;
  if (node.kind !== 'list') return undefined;
  const named = node.items.find((item) => entryOf(item, step) !== undefined);
  if (named !== undefined) return entryOf(named, step)?.node;
  return /^[1-9]\d*$/.test(step) ? node.items[Number(step) - 1] : undefined;
}

/** Puts a key that is not there into a group. */
function insert(text: string, node: SourceNode, steps: readonly string[], value: string): string {
  const [key = '', ...inner] = steps;
  const nested = inner.reduceRight((content, step) => `{ ${step}: ${content} }`, value);
  const entry = `${key}: ${nested}`;
  if (node.kind === 'empty') return fill(text, node.span, `{ ${entry} }`);
  if (node.kind !== 'map') {
    throw new ChangeError(
      `"${text.slice(node.span.start, node.span.end)}" is a value: nothing stands under it.`,
      `the place without "${key}"`,
    );
  }
  const [first] = node.entries;
  if (text[node.span.start] === '{' || first === undefined) {
    const comma = first === undefined ? ' ' : ',';
    return replace(text, { start: node.span.start + 1, end: node.span.start + 1 }, ` ${entry}${comma}`);
  }
  const { start } = first.keySpan;
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  // In a list the first key stands behind the dash; the keys below it stand as far in.
  const indent = ' '.repeat(start - lineStart);
  return replace(text, { start, end: start }, `${entry}\n${indent}`);
}

/** Writes a value behind a key that has none; in braces it may even have no colon. */
function fill(text: string, key: SourceSpan, value: string): string {
  const colon = /^\s*:/.exec(text.slice(key.end))?.[0].length;
  const at = key.end + (colon ?? 0);
  return replace(text, { start: at, end: at }, `${colon === undefined ? ':' : ''} ${value}`);
}

function replace(text: string, { start, end }: SourceSpan, by: string): string {
  return text.slice(0, start) + by + text.slice(end);
}
