import { type DateOrder, isSeparator, type Separator } from '@buildweek/records';
import {
  describeNode,
  isZone,
  listed,
  nearest,
  type Problem,
  type SourceNode,
  type SourceSpan,
  type SourceText,
  zoneNames,
} from '@buildweek/scenario';

const SEPARATOR_WORDS: Readonly<Record<string, Separator>> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  stroke: '|',
};

/** Reads values of a mapping file, and says at line and column what is wrong with them. */
export class MappingReader {
  readonly problems: Problem[] = [];
  private readonly source: SourceText;

  constructor(source: SourceText) {
    this.source = source;
  }

  /** @returns the value under a key of a group that has no other keys than these */
  group(node: SourceNode, keys: readonly string[]): (key: string) => SourceNode | undefined {
    const entries = this.entriesOf(node);
    for (const { key, keySpan } of entries) {
      if (keys.includes(key)) continue;
      this.refuse(keySpan, {
        message: `"${key}" is nothing that a mapping has here.`,
        found: key,
        expected: listed(keys, 12),
        write: nearest(key, keys) ?? 'the line without it, or one of these keys',
      });
    }
    return (key) => entries.find((entry) => entry.key === key)?.node;
  }

  /** Names that the user gives, with what stands under them. */
  entries(node: SourceNode): [string, SourceNode][] {
    return this.entriesOf(node).map(({ key, node: value }) => [key, value]);
  }

  text(node: SourceNode | undefined): string | undefined {
    if (node === undefined) return undefined;
    if (node.kind === 'scalar') return node.text;
    this.refuse(node.span, {
      message: 'A text is missing here.',
      found: describeNode(node),
      expected: 'a word or a heading, in quotation marks if it has a colon in it',
      write: '"Received on"',
    });
    return undefined;
  }

  words(node: SourceNode | undefined): string[] | undefined {
    if (node === undefined) return undefined;
    const items = node.kind === 'list' ? node.items : [node];
    return items.map((item) => this.text(item)).filter((text) => text !== undefined);
  }

  names(node: SourceNode | undefined): Record<string, string> | undefined {
    if (node === undefined) return undefined;
    const names: [string, string][] = [];
    for (const [spelling, name] of this.entries(node)) names.push([spelling, this.text(name) ?? spelling]);
    return Object.fromEntries(names);
  }

  /** Headings by columns; `none` for what is not there. */
  columns<Column extends string>(
    node: SourceNode | undefined,
    columns: readonly Column[],
  ): Partial<Record<Column, string | null>> | undefined {
    if (node === undefined) return undefined;
    const of = this.group(node, columns);
    const headings: Partial<Record<Column, string | null>> = {};
    for (const column of columns) {
      const heading = this.text(of(column));
      if (heading !== undefined) headings[column] = heading === 'none' ? null : heading;
    }
    return headings;
  }

  separator(node: SourceNode | undefined): Separator | undefined {
    const text = this.text(node);
    if (node === undefined || text === undefined) return undefined;
    const separator = SEPARATOR_WORDS[text] ?? text;
    if (isSeparator(separator)) return separator;
    return this.refuse(node.span, {
      message: 'This is no separator.',
      found: text,
      expected: 'semicolon, comma, tab or stroke',
      write: 'semicolon',
    });
  }

  order(node: SourceNode | undefined): DateOrder | undefined {
    const text = this.text(node);
    if (node === undefined || text === undefined) return undefined;
    if (text === 'day first' || text === 'month first') return text;
    return this.refuse(node.span, {
      message: 'This is no order of day and month.',
      found: text,
      expected:
        'day first (25/03/2026) or month first (03/25/2026); with the year first nothing needs to be said',
      write: 'day first',
    });
  }

  zone(node: SourceNode | undefined): string | undefined {
    const text = this.text(node);
    if (node === undefined || text === undefined) return undefined;
    if (isZone(text)) return text;
    return this.refuse(node.span, {
      message: `"${text}" is no time zone.`,
      found: text,
      expected: 'a name of the time zone database',
      write: nearest(text, zoneNames()) ?? 'Europe/Lisbon',
    });
  }

  yes(node: SourceNode | undefined): boolean {
    const text = this.text(node);
    if (node === undefined || text === undefined) return false;
    if (text === 'yes' || text === 'true') return true;
    if (text !== 'no' && text !== 'false') {
      this.refuse(node.span, {
        message: 'This is neither yes nor no.',
        found: text,
        expected: 'yes or no',
        write: 'yes',
      });
    }
    return false;
  }

  private entriesOf(node: SourceNode): Extract<SourceNode, { kind: 'map' }>['entries'] {
    if (node.kind === 'map') return node.entries;
    if (node.kind !== 'empty') {
      this.refuse(node.span, {
        message: 'A group of keys is missing here.',
        found: describeNode(node),
        expected: 'keys with a colon behind them, each on a line',
        write: 'columns:\n              asked: Received',
      });
    }
    return [];
  }

  private refuse(
    span: SourceSpan,
    detail: {
      readonly message: string;
      readonly found: string;
      readonly expected: string;
      readonly write: string;
    },
  ): undefined {
    this.problems.push(this.source.problem(span, detail));
    return undefined;
  }
}
