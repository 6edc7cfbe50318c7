import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Pair,
  parseDocument,
  type Scalar,
  type YAMLMap,
} from 'yaml';
import type { Problem } from '../problem.ts';
import type { SourceEntry, SourceNode, SourceSpan } from './source-node.ts';
import type { SourceText } from './source-text.ts';
import { explain } from './yaml-errors.ts';

/** More values than this, aliases written out, and the file is refused. */
const MOST_NODES = 100_000;
const MOST_LEVELS = 40;

/**
 * Reads YAML 1.2 into a tree of values with their places. Aliases and merge keys (`<<`) are written out.
 * In a group in braces a comma ends a value; words without a colon that follow are taken as its continuation,
 * so that `{ takes: 10 to 45 min, usually 20 }` says what one would think it says.
 *
 * @returns the tree, or null when the text is not valid YAML; `problems` says why, one for each line at most
 */
export function readYaml(source: SourceText): { root: SourceNode | null; problems: Problem[] } {
  const document = parseDocument(source.text, {
    uniqueKeys: false,
    merge: false,
    prettyErrors: false,
  });
  const problems: Problem[] = [];
  const lines = new Set<number>();
  // That a line starting with % has no "---" behind it follows from the line, which is reported.
  const errors = [...document.warnings, ...document.errors]
    .filter((error) => !(error.code === 'MISSING_CHAR' && error.message.includes('directives-end')))
    .sort((a, b) => a.pos[0] - b.pos[0]);
  for (const error of errors) {
    const { span, detail } = explain(error, source);
    const problem = source.problem(span, detail);
    if (!lines.has(problem.line)) problems.push(problem);
    lines.add(problem.line);
  }
  if (problems.length > 0) return { root: null, problems };
  const converter = new Converter(source, document as Document);
  const root = converter.node(document.contents, { start: 0, end: 0 });
  return { root: converter.tooMuch ? null : root, problems: converter.problems };
}

class Converter {
  readonly problems: Problem[] = [];
  tooMuch = false;
  private readonly source: SourceText;
  private readonly document: Document;
  private readonly open = new Set<unknown>();
  private nodes = 0;

  constructor(source: SourceText, document: Document) {
    this.source = source;
    this.document = document;
  }

  node(node: unknown, emptySpan: SourceSpan): SourceNode {
    const empty: SourceNode = { kind: 'empty', isReported: false, span: emptySpan };
    this.nodes++;
    if (this.tooMuch) return empty;
    if (this.nodes > MOST_NODES || this.open.size > MOST_LEVELS) {
      this.tooMuch = true;
      this.problems.push(
        this.source.problem(emptySpan, {
          message: 'With its aliases written out this file is too large.',
          expected: `at most ${MOST_NODES} values, ${MOST_LEVELS} levels deep`,
          write: 'fewer aliases (*name) inside anchors (&name)',
        }),
      );
      return empty;
    }
    if (isAlias(node)) return this.alias(node, spanOf(node, emptySpan));
    if (isScalar(node)) return scalar(node, emptySpan);
    if (!isMap(node) && !isSeq(node)) return empty;
    this.open.add(node);
    const span = spanOf(node, emptySpan);
    const result: SourceNode = isMap(node)
      ? { kind: 'map', entries: this.entries(node, span), span }
      : { kind: 'list', items: node.items.map((item) => this.node(item, span)), span };
    this.open.delete(node);
    return result;
  }

  private alias(
    node: { source: string; resolve: (document: Document) => unknown },
    span: SourceSpan,
  ): SourceNode {
    const target = node.resolve(this.document);
    if (target === undefined || this.open.has(target)) {
      this.problems.push(
        this.source.problem(span, {
          message:
            target === undefined
              ? `There is no anchor &${node.source} above.`
              : `The anchor &${node.source} contains itself.`,
          found: `*${node.source}`,
          expected: 'an anchor that ends further up',
          write: 'the value itself',
        }),
      );
      return { kind: 'empty', isReported: true, span };
    }
    return this.node(target, span);
  }

  private entries(map: YAMLMap, span: SourceSpan): SourceEntry[] {
    const entries: SourceEntry[] = [];
    const merged: SourceEntry[] = [];
    for (const pair of joinContinuations(map, this.source.text)) {
      const keySpan = spanOf(pair.key, span);
      if (!isScalar(pair.key)) {
        this.refuseKey(keySpan, isAlias(pair.key) ? `*${pair.key.source}` : 'a list or a group');
        continue;
      }
      if (pair.key.value === '<<' && pair.key.type === 'PLAIN') {
        merged.push(...this.mergedEntries(this.node(pair.value, keySpan), keySpan));
        continue;
      }
      const key = textOf(pair.key).trim();
      if (key === '' || key === '__proto__' || /\p{Cc}/u.test(key)) {
        this.refuseKey(keySpan, key === '' ? 'nothing' : key);
        continue;
      }
      const before = entries.find((entry) => entry.key === key);
      if (before !== undefined) {
        const { line } = this.source.placeOf(before.keySpan.start);
        this.problems.push(
          this.source.problem(keySpan, {
            message: `"${key}" is there twice, first in line ${line}.`,
            found: key,
            expected: 'each key once in its group',
            write: 'the lines of both under one key, or another name',
          }),
        );
        continue;
      }
      entries.push({ key, keySpan, node: this.node(pair.value, keySpan) });
    }
    for (const entry of merged) {
      if (!entries.some((own) => own.key === entry.key)) entries.push(entry);
    }
    return entries;
  }

  private mergedEntries(node: SourceNode, keySpan: SourceSpan): SourceEntry[] {
    if (node.kind === 'map') return [...node.entries];
    if (node.kind === 'list') return node.items.flatMap((item) => this.mergedEntries(item, keySpan));
    this.problems.push(
      this.source.problem(keySpan, {
        message: 'The merge key << takes groups of keys.',
        found: node.kind === 'scalar' ? node.text : 'nothing',
        expected: '* and the name of an anchor (&name) on a group of keys',
        write: '<<: *name',
      }),
    );
    return [];
  }

  private refuseKey(span: SourceSpan, found: string): void {
    this.problems.push(
      this.source.problem(span, {
        message: 'This cannot be a key or a name.',
        found,
        expected: 'a word or a few words',
        write: 'name: value',
      }),
    );
  }
}

/** A pair of the YAML tree, with the end of the value moved behind its continuations. */
type JoinedPair = Pick<Pair, 'key' | 'value'>;

/** Puts `10 to 45 min` and `usually 20` of a group in braces together again, with the text between them. */
function joinContinuations(map: YAMLMap, text: string): JoinedPair[] {
  if (map.flow !== true) return map.items;
  const pairs: JoinedPair[] = [];
  for (const pair of map.items) {
    const before = pairs.at(-1);
    const start = isScalar(before?.value) ? before.value.range?.[0] : undefined;
    const end = isScalar(pair.key) ? pair.key.range?.[1] : undefined;
    const continues =
      pair.value === null && isPlain(pair.key) && before !== undefined && isPlain(before.value);
    if (!continues || start === undefined || end === undefined) {
      pairs.push(pair);
      continue;
    }
    const joined = (before.value as Scalar).clone() as Scalar;
    joined.value = text.slice(start, end).replace(/\s*\n\s*/g, ' ');
    joined.source = String(joined.value);
    joined.range = [start, end, end];
    pairs[pairs.length - 1] = { key: before.key, value: joined };
  }
  return pairs;
}

function isPlain(node: unknown): boolean {
  return isScalar(node) && node.type === 'PLAIN';
}

function scalar(node: Scalar, emptySpan: SourceSpan): SourceNode {
  const { value } = node;
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') {
    return { kind: 'scalar', text: textOf(node).trim(), value, span: spanOf(node, emptySpan) };
  }
  // A key without a value: the place is the key, where something has to be added.
  return { kind: 'empty', isReported: false, span: emptySpan };
}

function textOf(node: Scalar): string {
  return typeof node.value === 'string' ? node.value : (node.source ?? String(node.value));
}

function spanOf(node: unknown, fallback: SourceSpan): SourceSpan {
  const range = (node as { range?: readonly number[] | null } | null)?.range;
  return range?.[0] === undefined || range[1] === undefined ? fallback : { start: range[0], end: range[1] };
}
