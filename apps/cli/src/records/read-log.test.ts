import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Failure } from '../failure.ts';
import { mappingText } from './mapping-text.ts';
import { type ReadLogOptions, readLog } from './read-log.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'buildweek-log-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** The message that a log is refused with, without its folder. */
async function refusal(path: string, options: ReadLogOptions = {}): Promise<string> {
  try {
    await readLog(path, options);
  } catch (error) {
    if (error instanceof Failure && error.exitCode === 2) return error.message.replaceAll(`${folder}/`, '');
    throw error;
  }
  throw new Error('The log was read.');
}

/** Twelve requests, one a day, in a dialect. */
interface Request {
  readonly day: number;
  readonly minute: number;
  readonly part: string;
  readonly pieces: number;
  /** Days later, or open. */
  readonly took: number | null;
  readonly rush: boolean;
}

interface Dialect {
  readonly separator: ';' | ',' | '\t' | '|';
  readonly lineEnd: '\n' | '\r\n' | '\r';
  readonly encoding: 'utf-8' | 'utf-8 with mark' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  readonly headings: 'English' | 'German' | 'French';
  readonly date: 'ISO' | 'ISO with T' | 'dots' | 'day first' | 'month first' | 'twelve hours' | 'serial';
  readonly isQuoted: boolean;
}

const HEADINGS = {
  English: ['Order no', 'Received', 'Part', 'Quantity', 'Priority', 'Finished'],
  German: ['Auftrag', 'Eingang', 'Bauteil', 'Stück', 'Priorität', 'Fertig'],
  French: ['Numéro', 'Reçu le', 'Pièce', 'Quantité', 'Priorité', 'Terminé le'],
} as const;
const START = Date.parse('2026-02-20T00:00Z');
const DAY = 86_400_000;
const MINUTE = 60_000;

function dateIn(style: Dialect['date'], time: number): string {
  const iso = new Date(time).toISOString();
  const [year, month, day] = [iso.slice(0, 4), iso.slice(5, 7), iso.slice(8, 10)];
  const clock = iso.slice(11, 16);
  const hour = Number(clock.slice(0, 2));
  switch (style) {
    case 'ISO':
      return `${year}-${month}-${day} ${clock}`;
    case 'ISO with T':
      return `${year}-${month}-${day}T${clock}:00`;
    case 'dots':
      return `${Number(day)}.${Number(month)}.${year.slice(2)} ${clock}`;
    case 'day first':
      return `${day}/${month}/${year} ${clock}`;
    case 'month first':
      return `${month}/${day}/${year} ${clock}`;
    case 'twelve hours':
      return `${Number(month)}/${Number(day)}/${year} ${((hour + 11) % 12) + 1}:${clock.slice(3)} ${hour < 12 ? 'AM' : 'PM'}`;
    case 'serial':
      return String(25_569 + time / DAY);
  }
}

function written(requests: readonly Request[], dialect: Dialect): string | Uint8Array {
  const rows = requests.map(({ day, minute, part, pieces, took, rush }, index) => {
    const asked = START + day * DAY + minute * MINUTE;
    return [
      String(100 + index),
      dateIn(dialect.date, asked),
      part,
      String(pieces),
      rush ? 'urgent' : 'normal',
      took === null ? '' : dateIn(dialect.date, asked + took * DAY),
    ];
  });
  const cell = (text: string): string =>
    dialect.isQuoted || text.includes(dialect.separator) ? `"${text.replaceAll('"', '""')}"` : text;
  const text = [[...HEADINGS[dialect.headings]], ...rows]
    .map((cells) => cells.map(cell).join(dialect.separator))
    .join(dialect.lineEnd);
  switch (dialect.encoding) {
    case 'utf-8':
      return text;
    case 'utf-8 with mark':
      return `\uFEFF${text}`;
    case 'utf-16le':
      return Buffer.from(`\uFEFF${text}`, 'utf16le');
    case 'utf-16be':
      return Buffer.from(`\uFEFF${text}`, 'utf16le').swap16();
    case 'windows-1252':
      return Buffer.from(text, 'latin1');
  }
}

const request: fc.Arbitrary<Request> = fc.record({
  day: fc.integer({ min: 0, max: 300 }),
  minute: fc.integer({ min: 1, max: 1439 }),
  part: fc.constantFrom('Gehäuse', 'ring, large', 'pièce n° 4', 'clip'),
  pieces: fc.integer({ min: 1, max: 400 }),
  took: fc.option(fc.integer({ min: 0, max: 20 })),
  rush: fc.boolean(),
});
const dialect: fc.Arbitrary<Dialect> = fc.record({
  separator: fc.constantFrom(';', ',', '\t', '|'),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  encoding: fc.constantFrom('utf-8', 'utf-8 with mark', 'utf-16le', 'utf-16be', 'windows-1252'),
  headings: fc.constantFrom('English', 'German', 'French'),
  date: fc.constantFrom('ISO', 'ISO with T', 'dots', 'day first', 'month first', 'twelve hours', 'serial'),
  isQuoted: fc.boolean(),
});
/** Days that tell the order of day and month. */
const TELLING: Request[] = [13, 20, 25, 27].map((day) => ({
  day: day - 20 + 59,
  minute: 600,
  part: 'clip',
  pieces: 1,
  took: 1,
  rush: false,
}));

describe('readLog', () => {
  it('reads back what was written, in whatever dialect', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(request, { minLength: 10, maxLength: 40 }), dialect, async (own, style) => {
        const requests = [...TELLING, ...own];
        const { jobs } = await readLog(file('dialect.csv', written(requests, style)));
        const found = jobs
          .map(({ name, asked, part, quantity, rush, finished, isOpen }) => ({
            name,
            asked,
            part,
            quantity,
            rush,
            finished,
            isOpen,
          }))
          .sort((a, b) => Number(a.name) - Number(b.name));
        const expected = requests.map(({ day, minute, part, pieces, rush, took }, index) => {
          const asked = START + day * DAY + minute * MINUTE;
          const finished = took === null ? null : asked + took * DAY;
          return {
            name: String(100 + index),
            asked,
            part,
            quantity: pieces,
            rush,
            finished,
            isOpen: took === null,
          };
        });
        expect(found).toEqual(expected);
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  it('counts lines of the file, where cells run over line ends and the first line names the separator', async () => {
    const rows = Array.from(
      { length: 12 },
      (_, index) => `${index};"two\r\nlines";2026-03-${10 + index} 09:00;ring`,
    );
    const log = await readLog(file('lines.csv', ['sep=;', 'No;Remark;Asked;Part', ...rows].join('\r\n')));
    expect(log.requests.plan.headerLine).toBe(2);
    expect(log.jobs.map(({ row }) => row).slice(0, 3)).toEqual([3, 5, 7]);
  });

  it('reads back its own mapping', async () => {
    const rows = Array.from({ length: 12 }, (_, index) =>
      [
        index,
        `${13 + index}/03/2026 9:00`,
        index % 2 ? 'Ring' : 'RING',
        'eilig',
        '13/03/2026 9:00',
        '13/03/2026 10:00',
      ].join('\t'),
    );
    const text = [
      'Nr\tEingang\tBauteil\tPrio\tSchleifen: Arbeit Beginn\tSchleifen: Arbeit Ende',
      ...rows,
    ].join('\n');
    const path = file('own.csv', text);
    const first = await readLog(path);
    const mapping = file('own.yaml', mappingText(first));
    const second = await readLog(path, { mapping });
    expect(second.jobs).toEqual(first.jobs);
    expect(second.requests.plan.stages).toMatchObject([{ name: 'schleifen:', isWork: true }]);
    expect(Object.values(second.requests.plan.places).every(({ by }) => by === 'mapping')).toBe(true);
  });

  const ROWS = Array.from({ length: 12 }, (_, index) => `${index};03/04/2026;ring`);
  it.each([
    ['nothing', '', 'refused.csv:1: error: There is nothing in this file.'],
    ['no table', 'Dear lab,\nthank you.\n', 'refused.csv:1: error: This is no table.'],
    [
      'a workbook',
      'PK\u0003\u0004',
      'Cannot read the log refused.csv: it is a workbook or another packed file.',
    ],
    [
      'an open quotation mark',
      'No;Asked;Part\n1;2026-03-04;ring\n2;"x\n',
      'refused.csv:3: error: A quotation mark is opened and not closed.',
    ],
    [
      'three rows',
      'No;Asked;Part\n1;2026-03-04;ring\n2;2026-03-04;ring\n3;2026-03-04;ring\n',
      'refused.csv:1: error: There are only 3 rows below the headings.',
    ],
    [
      'dates that cannot be told apart',
      ['No;Asked;Part', ...ROWS].join('\n'),
      'refused.csv:2: error: It cannot be told which number is the day and which the month.',
    ],
  ])('refuses a file with %s, and says where and how to mend it', async (_, text, message) => {
    const said = await refusal(file('refused.csv', text));
    expect(said).toContain(message);
    expect(said).toContain('\n  expected: ');
    expect(said).toContain('\n  write:    ');
  });

  it('refuses a file that is not there', async () => {
    expect(await refusal(join(folder, 'nowhere.csv'))).toBe(
      'Cannot read the log nowhere.csv: there is no such file.',
    );
  });

  it('reads such dates when the mapping says which is which', async () => {
    const path = file('told.csv', ['No;Asked;Part', ...ROWS].join('\n'));
    const log = await readLog(path, { mapping: file('told.yaml', 'dates: month first\n') });
    expect(new Date(log.from).toISOString().slice(0, 10)).toBe('2026-03-04');
  });

  it.each([
    [
      'datse: day first\n',
      'mapping.yaml:1:1: error: "datse" is nothing that a mapping has here.',
      'write:    dates',
    ],
    [
      'dates: year first\n',
      'mapping.yaml:1:8: error: This is no order of day and month.',
      'write:    day first',
    ],
    [
      'zone: Europe/Lisbom\n',
      'mapping.yaml:1:7: error: "Europe/Lisbom" is no time zone.',
      'write:    Europe/Lisbon',
    ],
    ['separator: "."\n', 'mapping.yaml:1:12: error: This is no separator.', 'write:    semicolon'],
    ['columns: [a]\n', 'mapping.yaml:1:10: error: A group of keys is missing here.', 'expected: keys'],
    [
      'columns:\n  asked:\n    - a\n',
      'mapping.yaml:3:5: error: A text is missing here.',
      'found:    a list of 1',
    ],
    ['stages: { print: { is work: perhaps } }\n', 'error: This is neither yes nor no.', 'write:    yes'],
    ['columns:\n\tasked: a\n', 'mapping.yaml:2:1: error: A tab stands where the line is indented.', 'write:'],
    [
      'columns: { asked: Eingang }\n',
      'log.csv:1: error: No column is headed "Eingang", which the mapping names for asked.',
      'found:    "No", "Asked", "Part"',
    ],
  ])('refuses the mapping %j', async (text, message, write) => {
    const log = file('log.csv', ['No;Asked;Part', ...ROWS].join('\n'));
    const said = await refusal(log, { mapping: file('mapping.yaml', text) });
    expect(said).toContain(message);
    expect(said).toContain(write);
  });
});
