/** A stretch of the text, in UTF-16 code units from its start; the end is not part of it. */
export interface SourceSpan {
  readonly start: number;
  readonly end: number;
}

/** A value of the file with its place. Aliases and merge keys are resolved; places are those of the anchors. */
export type SourceNode = SourceScalar | SourceEmpty | SourceList | SourceMap;

interface SourceScalar {
  readonly kind: 'scalar';
  /** As it was written, without quotes. */
  readonly text: string;
  readonly value: string | number | boolean;
  readonly span: SourceSpan;
}

interface SourceEmpty {
  readonly kind: 'empty';
  /** Whether it is empty because of a mistake that has been reported. */
  readonly isReported: boolean;
  readonly span: SourceSpan;
}

interface SourceList {
  readonly kind: 'list';
  readonly items: readonly SourceNode[];
  readonly span: SourceSpan;
}

interface SourceMap {
  readonly kind: 'map';
  readonly entries: readonly SourceEntry[];
  readonly span: SourceSpan;
}

export interface SourceEntry {
  readonly key: string;
  readonly keySpan: SourceSpan;
  readonly node: SourceNode;
}

/** Where a value is in the file: keys and positions from the top. */
export type SourcePath = readonly (string | number)[];

/** @returns the value as plain data, for the check of its structure */
export function toPlain(node: SourceNode): unknown {
  switch (node.kind) {
    case 'scalar':
      return node.value;
    case 'empty':
      return null;
    case 'list':
      return node.items.map(toPlain);
    case 'map':
      return Object.fromEntries(node.entries.map((entry) => [entry.key, toPlain(entry.node)]));
  }
}

/** @returns the entry of a map, or undefined */
export function entryOf(node: SourceNode | undefined, key: string): SourceEntry | undefined {
  return node?.kind === 'map' ? node.entries.find((entry) => entry.key === key) : undefined;
}

/** How a value is named in a message. */
export function describeNode(node: SourceNode): string {
  switch (node.kind) {
    case 'scalar':
      return node.text;
    case 'empty':
      return 'nothing';
    case 'list':
      return node.items.length === 0 ? 'an empty list' : `a list of ${node.items.length}`;
    case 'map':
      return `a group of keys (${node.entries
        .slice(0, 3)
        .map((entry) => entry.key)
        .join(', ')}${node.entries.length > 3 ? ', …' : ''})`;
  }
}
