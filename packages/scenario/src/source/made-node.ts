import type { SourceEntry, SourceNode, SourceSpan } from './source-node.ts';

/** What is made for a question stands nowhere in the file. */
const NOWHERE: SourceSpan = { start: 0, end: 1 };

/** A group of keys that does not stand in the file. */
export function madeGroup(nodes: Readonly<Record<string, SourceNode>>): SourceNode {
  return {
    kind: 'map',
    entries: Object.entries(nodes).map(([key, node]) => madeEntry(key, node)),
    span: NOWHERE,
  };
}

export function madeEntry(key: string, node: SourceNode): SourceEntry {
  return { key, keySpan: NOWHERE, node };
}

export function madeScalar(text: string): SourceNode {
  return { kind: 'scalar', text, value: text, span: NOWHERE };
}

export function madeScalars(keys: Readonly<Record<string, string>>): Record<string, SourceNode> {
  return Object.fromEntries(Object.entries(keys).map(([key, text]) => [key, madeScalar(text)]));
}

/** The keys of a group with some of them said otherwise, or added. */
export function withKeys(
  node: SourceNode | undefined,
  keys: Readonly<Record<string, SourceNode>>,
): SourceNode {
  const kept = node?.kind === 'map' ? node.entries.filter(({ key }) => !(key in keys)) : [];
  const made = Object.entries(keys).map(([key, value]) => madeEntry(key, value));
  return { kind: 'map', entries: [...kept, ...made], span: node?.span ?? NOWHERE };
}
