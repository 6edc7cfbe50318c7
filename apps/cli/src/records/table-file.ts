import { createReadStream, statSync } from 'node:fs';
import { pipeline } from 'node:stream/promises';
import { TextDecoder } from 'node:util';
import {
  type Encoding,
  fromWindows1252,
  guessEncoding,
  guessSeparator,
  notText,
  type Separator,
  TableProblem,
  type TableRow,
} from '@buildweek/records';
import { CsvError, parse } from 'csv-parse';
import { badInput } from '../failure.ts';
import { isFileError, reasonOf } from '../files/read-file.ts';

/** How much of a file is looked at for its separator. */
const START = 65_536;
/** No row is longer; a quotation mark that is never closed makes one row of all that follow. */
const LONGEST_ROW = 1_000_000;

/** A table on disk, which is read as a stream. */
export interface TableFile {
  readonly path: string;
  readonly encoding: Encoding;
  readonly separator: Separator;
  /** Bytes. */
  readonly size: number;
  /**
   * Hands over one row after the other, empty lines left out.
   * @param take returns false to stop
   * @param onBytes is told how many bytes have been read
   * @throws TableProblem when the table ends within a quoted cell
   */
  eachRow(take: (row: TableRow) => boolean, onBytes?: (bytes: number) => void): Promise<void>;
}

/**
 * Looks how a table is written.
 * @param what what it is expected to be, for messages
 * @throws Failure for bad input when it cannot be read or is no text. @throws TableProblem when nothing separates cells
 */
export async function openTable(
  path: string,
  what: string,
  separator: Separator | undefined,
): Promise<TableFile> {
  try {
    const { size } = statSync(path);
    const start = await firstBytes(path);
    const kind = notText(start);
    if (kind !== null) {
      throw badInput(
        `Cannot read the ${what} ${path}: it is ${kind}.\n  expected: a table in plain text\n  write:    the list, saved as CSV (“UTF-8” where there is a choice) by the program that it is kept in`,
      );
    }
    const guessed = guessEncoding(start);
    const encoding = guessed === 'utf-8' && !(await isUtf8(path)) ? 'windows-1252' : guessed;
    const text = new Decoder(encoding).some(start);
    const found = separator ?? guessSeparator(text);
    if (found === null) throw noCells(text);
    const skipsFirstLine = /^\uFEFF?sep=.\r?\n/i.test(text);
    return {
      path,
      encoding,
      separator: found,
      size,
      eachRow: (take, onBytes = () => undefined) =>
        eachRow({ path, encoding, separator: found, skipsFirstLine }, take, onBytes),
    };
  } catch (error) {
    if (isFileError(error)) throw badInput(`Cannot read the ${what} ${path}: ${reasonOf(error)}.`);
    throw error;
  }
}

interface Written {
  readonly path: string;
  readonly encoding: Encoding;
  readonly separator: Separator;
  readonly skipsFirstLine: boolean;
}

async function eachRow(
  { path, encoding, separator, skipsFirstLine }: Written,
  take: (row: TableRow) => boolean,
  onBytes: (bytes: number) => void,
): Promise<void> {
  const file = createReadStream(path, { highWaterMark: 1 << 18 });
  const stop = new AbortController();
  let last = 0;
  const parser = parse({
    delimiter: separator,
    record_delimiter: '\n',
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: true,
    max_record_size: LONGEST_ROW,
    from_line: skipsFirstLine ? 2 : 1,
    on_record: (cells: string[], { lines }) => {
      last = lines;
      // The parser counts the line on which a row ends.
      const within = cells.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
      if (!stop.signal.aborted && !take({ line: lines - within, cells })) stop.abort();
      return null;
    },
  });
  parser.resume();
  try {
    await pipeline(
      file,
      async function* (chunks: AsyncIterable<Buffer>) {
        const decoder = new Decoder(encoding);
        const lines = new LineEnds();
        for await (const chunk of chunks) {
          onBytes(file.bytesRead);
          yield lines.some(decoder.some(chunk));
        }
        yield lines.rest();
      },
      parser,
      { signal: stop.signal },
    );
  } catch (error) {
    if (stop.signal.aborted) return;
    if (error instanceof CsvError) throw openQuote(last);
    throw error;
  }
}

/** Makes one kind of line end of all, piece by piece; the parser would count those within cells twice. */
class LineEnds {
  private kept = '';

  some(text: string): string {
    const whole = this.kept + text;
    // What follows a carriage return at the end is not known yet.
    this.kept = whole.endsWith('\r') ? '\r' : '';
    return (this.kept === '' ? whole : whole.slice(0, -1)).replace(/\r\n?/g, '\n');
  }

  rest(): string {
    return this.kept === '' ? '' : '\n';
  }
}

/** Letters from bytes, piece by piece. */
class Decoder {
  private readonly decoder: TextDecoder | null;

  constructor(encoding: Encoding) {
    this.decoder = encoding === 'windows-1252' ? null : new TextDecoder(encoding);
  }

  some(bytes: Uint8Array): string {
    if (this.decoder !== null) return this.decoder.decode(bytes, { stream: true });
    return fromWindows1252(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString('latin1'));
  }
}

async function firstBytes(path: string): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  for await (const chunk of createReadStream(path, { end: START - 1 })) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

async function isUtf8(path: string): Promise<boolean> {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  try {
    for await (const chunk of createReadStream(path, { highWaterMark: 1 << 20 })) {
      decoder.decode(chunk as Buffer, { stream: true });
    }
    decoder.decode();
    return true;
  } catch (error) {
    if (error instanceof TypeError) return false;
    throw error;
  }
}

function noCells(text: string): TableProblem {
  const first = text.split(/\r?\n/).find((line) => line.trim() !== '') ?? '';
  return new TableProblem(first === '' ? 'There is nothing in this file.' : 'This is no table.', {
    row: 1,
    found: first.slice(0, 80),
    expected:
      'a header line and a row for each request, with commas, semicolons, tabs or | between the cells',
    write: 'the list, saved as CSV by the program that it is kept in',
  });
}

function openQuote(lastRow: number): TableProblem {
  return new TableProblem('A quotation mark is opened and not closed.', {
    row: lastRow + 1,
    found: '"',
    expected: 'two quotation marks around a cell, or none',
    write: 'the cell without it, or with its own quotation marks doubled',
  });
}
