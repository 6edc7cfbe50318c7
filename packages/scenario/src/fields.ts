import type { AssumptionSource, Reading } from './reading.ts';
import { describeNode, type SourceNode, type SourcePath } from './source/source-node.ts';
import { said } from './words/mended.ts';
import type { Wording } from './words/wording-error.ts';

/** Texts of values for keys that are not written, as a machine class gives them. */
export type ClassTexts = Readonly<Record<string, string>>;

/** One group of keys of the file (or a group that is not there: then all its keys are absent). */
export class Fields {
  readonly reading: Reading;
  readonly path: SourcePath;
  private readonly texts: ClassTexts;

  constructor(reading: Reading, path: SourcePath, texts: ClassTexts = {}) {
    this.reading = reading;
    this.path = path;
    this.texts = texts;
  }

  withClass(texts: ClassTexts): Fields {
    return new Fields(this.reading, this.path, texts);
  }

  pathOf(key: string | number): SourcePath {
    return [...this.path, key];
  }

  node(key: string | number): SourceNode | undefined {
    const path = this.pathOf(key);
    return this.reading.isBroken(path) ? undefined : this.reading.nodeAt(path);
  }

  /** Whether the key is written, rightly or wrongly. */
  has(key: string | number): boolean {
    return this.reading.nodeAt(this.pathOf(key)) !== undefined;
  }

  /** What the class says for a key that is not written. */
  classText(key: string): string | undefined {
    return this.texts[key];
  }

  group(key: string | number): Fields {
    return new Fields(this.reading, this.pathOf(key));
  }

  /** The keys of this group, or those of the group under a key, in the order of the file. */
  names(key?: string): string[] {
    const node = key === undefined ? this.reading.nodeAt(this.path) : this.node(key);
    return node?.kind === 'map' ? node.entries.map((entry) => entry.key) : [];
  }

  /** How many items the list under a key has. */
  length(key: string): number {
    const node = this.node(key);
    return node?.kind === 'list' ? node.items.length : 0;
  }

  /**
   * The value of a key; when it is not written, that of the machine class, else the default of the program,
   * both worded as in a file. Every value read is put on the list of assumptions.
   *
   * @param fallback wording of the default; null: none
   * @returns undefined when there is none, or when what is written is wrong (which is then reported)
   */
  read<T>(key: string | number, wording: Wording<T>, fallback: string | null = null): T | undefined {
    const path = this.pathOf(key);
    const node = this.node(key);
    if (node !== undefined) return this.scalar(path, node, wording);
    if (this.has(key)) return undefined;
    const classText = this.texts[key];
    const text = classText ?? fallback;
    if (text === null) return undefined;
    this.reading.assume(
      path,
      text,
      classText === undefined ? 'default of the program' : 'default of a machine class',
    );
    return wording(text);
  }

  /** As {@link read}, for keys that cannot be left open: when the value is wrong, the default stands in for it. */
  readOr<T>(key: string, wording: Wording<T>, fallback: string): T {
    const value = this.read(key, wording, fallback);
    return value === undefined ? wording(fallback) : value;
  }

  /** The value of a key that has to be there; the stand-in is used after it was reported. */
  need<T>(key: string, wording: Wording<T>, standIn: T, expected: string, write: string): T {
    if (!this.has(key) && this.texts[key] === undefined) this.missing(key, expected, write);
    return this.read(key, wording) ?? standIn;
  }

  /** Reports a key that has to be there, unless a misspelt key is probably meant to be it. */
  missing(key: string, expected: string, write: string): void {
    if (this.reading.isBroken(this.path) || this.reading.isMisspelt(this.path)) return;
    this.reading.report(this.path, 'key', {
      message: `"${key}" is missing${this.path.length === 0 ? '' : ` in ${nameOfGroup(this.path)}`}.`,
      expected,
      write,
    });
  }

  /** Every item of a list, or the one value that stands in its place; what is wrong is reported and left out. */
  readList<T>(key: string, wording: Wording<T>): T[] {
    const node = this.node(key);
    if (node === undefined) return [];
    const path = this.pathOf(key);
    if (node.kind !== 'list') {
      const value = this.scalar(path, node, wording);
      return value === undefined ? [] : [value];
    }
    const values: T[] = [];
    node.items.forEach((item, index) => {
      const value = this.parse([...path, index], item, wording);
      if (value !== undefined) values.push(value);
    });
    const text = node.items.map(describeNode).join(', ');
    this.reading.assume(path, text, 'stated in the scenario');
    return values;
  }

  /** Reports a key that has no meaning together with the others. */
  refuse(key: string, reason: string, write: string): void {
    if (this.node(key) === undefined) return;
    this.report(key, 'key', `"${key}" has no meaning here: ${reason}`, 'a key that has an effect', write);
  }

  report(
    key: string | number,
    part: 'key' | 'value',
    message: string,
    expected: string,
    write: string,
  ): void {
    const node = this.reading.nodeAt(this.pathOf(key));
    const found = node === undefined ? {} : { found: part === 'key' ? String(key) : describeNode(node) };
    this.reading.report(this.pathOf(key), part, { message, ...found, expected, write });
  }

  /** Writes down a value that follows from others. */
  assume(key: string, value: string, source: AssumptionSource = 'default of the program'): void {
    this.reading.assume(this.pathOf(key), value, source);
  }

  private scalar<T>(path: SourcePath, node: SourceNode, wording: Wording<T>): T | undefined {
    const value = this.parse(path, node, wording);
    if (value !== undefined && node.kind === 'scalar') {
      this.reading.assume(path, node.text, 'stated in the scenario');
    }
    return value;
  }

  private parse<T>(path: SourcePath, node: SourceNode, wording: Wording<T>): T | undefined {
    if (this.reading.isBroken(path)) return undefined;
    try {
      if (node.kind === 'scalar') return said(this.reading.files.expand(node.text), wording);
      // A group or list in the place of a value: its wording says what is needed.
      said('', wording);
    } catch (error) {
      this.reading.reportWording(path, 'value', describeNode(node), error);
    }
    return undefined;
  }
}

/** Items of lists are counted from 1. */
function nameOfGroup(path: SourcePath): string {
  const last = path.at(-1);
  return typeof last === 'number' ? `item ${last + 1} of "${path.at(-2)}"` : `"${last}"`;
}
