import type { Assumption } from '@buildweek/results';
import type { Files } from './files.ts';
import type { Problem } from './problem.ts';
import type { ShapeReader } from './shape-reader.ts';
import type { SourceNode, SourcePath, SourceSpan } from './source/source-node.ts';
import type { ProblemDetail, SourceText } from './source/source-text.ts';
import { WordingError } from './words/wording-error.ts';

export type AssumptionSource = Assumption['source'];

/** What has come up while one file is read: problems, and every value with where it came from. */
export class Reading {
  readonly source: SourceText;
  readonly root: SourceNode;
  readonly files: Files;
  /** Reads the meshes that parts name; null: nobody does. */
  readonly shapes: ShapeReader | null;
  private readonly found: Problem[] = [];
  private readonly values: Assumption[] = [];
  private readonly named = new Set<string>();
  /** Places whose structure is wrong: nothing below them is read. */
  private readonly broken = new Set<string>();
  private readonly errorPaths = new Set<string>();
  /** Groups that hold a key nobody knows: what seems to be missing in them is probably that key. */
  private readonly misspelt = new Set<string>();

  constructor(source: SourceText, root: SourceNode, files: Files, shapes: ShapeReader | null = null) {
    this.source = source;
    this.root = root;
    this.files = files;
    this.shapes = shapes;
  }

  get problems(): readonly Problem[] {
    return this.found;
  }

  /** Values in the order of reading, those of one section and of one name in it together. */
  get assumptions(): readonly Assumption[] {
    const sections = new Map<string, Map<string, Assumption[]>>();
    for (const assumption of this.values) {
      const [section = '', name = ''] = assumption.what.split(' / ');
      const names = sections.get(section) ?? new Map<string, Assumption[]>();
      sections.set(section, names);
      names.set(name, [...(names.get(name) ?? []), assumption]);
    }
    return [...sections.values()].flatMap((names) => [...names.values()].flat());
  }

  get hasErrors(): boolean {
    return this.found.some((problem) => problem.severity === 'error');
  }

  /** @returns whether an error was found at this place or below it */
  hasErrorsWithin(path: SourcePath): boolean {
    const prefix = keyOf(path);
    return [...this.errorPaths].some(
      (candidate) => candidate === prefix || candidate.startsWith(`${prefix}\n`),
    );
  }

  /** A problem with the value at a path, or with its key; where there is no such place, with what it belongs to. */
  report(path: SourcePath, part: 'key' | 'value', detail: ProblemDetail): void {
    if (detail.severity !== 'warning') this.errorPaths.add(keyOf(path));
    this.reportSpan(this.locate(path, part), detail);
  }

  reportSpan(span: SourceSpan, detail: ProblemDetail): void {
    const problem = this.source.problem(span, detail);
    const twice = this.found.some(
      (other) =>
        other.line === problem.line && other.column === problem.column && other.message === problem.message,
    );
    if (!twice) this.found.push(problem);
  }

  /** Reports what a wording does not say, at the value. @throws every other error */
  reportWording(path: SourcePath, part: 'key' | 'value', found: string, error: unknown): void {
    if (!(error instanceof WordingError)) throw error;
    this.report(path, part, { message: error.message, found, expected: error.expected, write: error.write });
  }

  /** Marks a place whose structure is wrong. */
  breakOff(path: SourcePath): void {
    this.broken.add(keyOf(path));
  }

  isBroken(path: SourcePath): boolean {
    for (let length = 0; length <= path.length; length++) {
      if (this.broken.has(keyOf(path.slice(0, length)))) return true;
    }
    return false;
  }

  markMisspelt(path: SourcePath): void {
    this.misspelt.add(keyOf(path));
  }

  isMisspelt(path: SourcePath): boolean {
    return this.misspelt.has(keyOf(path));
  }

  /** @returns whether a key of a group is wrong or perhaps misspelt, which has been reported: what it says is not known */
  isInDoubt(group: SourcePath, key: string): boolean {
    return this.isMisspelt(group) || this.hasErrorsWithin([...group, key]);
  }

  assume(path: SourcePath, value: string, source: AssumptionSource): void {
    const what = nameOfPath(path);
    if (this.named.has(what)) return;
    this.named.add(what);
    const line =
      source === 'stated in the scenario' ? this.source.placeOf(this.locate(path, 'value').start).line : null;
    this.values.push({ what, value, source, line });
  }

  /** @returns the node at a path, or undefined */
  nodeAt(path: SourcePath): SourceNode | undefined {
    let node: SourceNode | undefined = this.root;
    for (const step of path) node = childOf(node, step)?.node;
    return node;
  }

  locate(path: SourcePath, part: 'key' | 'value'): SourceSpan {
    let node: SourceNode = this.root;
    let keySpan: SourceSpan | null = null;
    for (const step of path) {
      const child = childOf(node, step);
      // What is not there is reported at the key of what it belongs to.
      if (child === undefined) return keySpan ?? headOf(node);
      node = child.node;
      keySpan = child.keySpan ?? headOf(node);
    }
    if (part === 'key') return keySpan ?? headOf(node);
    return node.kind === 'empty' && keySpan !== null ? keySpan : headOf(node);
  }
}

function childOf(
  node: SourceNode | undefined,
  step: string | number,
): { node: SourceNode; keySpan: SourceSpan | null } | undefined {
  if (node?.kind === 'map') return node.entries.find((entry) => entry.key === String(step));
  if (node?.kind === 'list') {
    const item = node.items[Number(step)];
    return item === undefined ? undefined : { node: item, keySpan: null };
  }
  return undefined;
}

/** A group or a list is marked at its first key or item, not over all its lines. */
function headOf(node: SourceNode): SourceSpan {
  if (node.kind === 'map' && node.entries[0] !== undefined) return node.entries[0].keySpan;
  if (node.kind === 'list' && node.items[0] !== undefined) return headOf(node.items[0]);
  return node.span;
}

function keyOf(path: SourcePath): string {
  return path.map(String).join('\n');
}

/** Stages are named, other items of lists are counted from 1. */
function nameOfPath(path: SourcePath): string {
  return path
    .filter((step) => typeof step === 'string' || path[0] !== 'routes')
    .map((step) => (typeof step === 'number' ? String(step + 1) : step))
    .join(' / ');
}
