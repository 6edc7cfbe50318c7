import { describe, expect, it } from 'vitest';
import { readJobs, rowsWith } from '../fixture/read-rows.ts';

const HEADINGS = ['No', 'Asked', 'Part', 'Quantity', 'Ready', 'Status', 'Customer'];

/** Twelve ordinary rows, lines 2 to 13, with others behind them. */
function table(...others: string[][]): string[][] {
  const ordinary = Array.from({ length: 12 }, (_, index) => [
    `A${index}`,
    `2026-03-${String(index + 1).padStart(2, '0')} 09:30`,
    index % 2 === 0 ? 'ring' : 'cap',
    String(index + 1),
    `2026-03-${String(index + 3).padStart(2, '0')} 15:00`,
    'done',
    'Bo Marten',
  ]);
  return [HEADINGS, ...ordinary, ...others];
}
const at = (text: string): number => Date.parse(`${text}Z`);
const ROW = ['B1', '2026-03-12 10:00', 'ring', '4', '2026-03-14 10:00', 'done', 'Bo Marten'];
const withCell = (heading: string, cell: string): string[] =>
  ROW.map((own, index) => (HEADINGS[index] === heading ? cell : own));

describe('JobRows', () => {
  it('makes a job of every ordinary row, from the day of the first to the last time of all', () => {
    const log = readJobs(table());
    expect(log.counted).toEqual({ read: 12, kept: 12, troubles: [] });
    expect(log.from).toBe(at('2026-03-01T00:00'));
    expect(log.until).toBe(at('2026-03-14T15:01'));
    expect(log.jobs[0]).toEqual({
      row: 2,
      name: 'A0',
      asked: at('2026-03-01T09:30'),
      askedHasClock: true,
      part: 'ring',
      quantity: 1,
      process: null,
      material: null,
      rush: null,
      promised: null,
      finished: at('2026-03-03T15:00'),
      finishedHasClock: true,
      cancelled: false,
      isOpen: false,
      stages: [],
      stage: null,
      machine: null,
      requester: null,
    });
  });

  it('leaves out the same row again, and rows of empty cells', () => {
    const log = readJobs(table(ROW, ROW, ['', '', '', '', '', '', '']));
    expect(log.jobs).toHaveLength(13);
    expect(rowsWith(log, 'duplicate')).toEqual([15]);
    expect(rowsWith(log, 'empty')).toEqual([16]);
  });

  it('keeps rows alike where neither a number nor a clock would tell two requests apart', () => {
    const rows = Array.from({ length: 12 }, () => ['2026-03-04', 'ring', '2026-03-06']);
    const log = readJobs([['Asked', 'Part', 'Ready'], ...rows]);
    expect(log.jobs).toHaveLength(12);
    expect(rowsWith(log, 'possible duplicate')).toHaveLength(11);
  });

  it('lets the later row count where number and part are the same, and knows two parts of one order', () => {
    const log = readJobs(table(ROW, withCell('Quantity', '6'), withCell('Part', 'cap')));
    expect(rowsWith(log, 'same job again')).toEqual([15]);
    expect(
      log.jobs.filter(({ name }) => name === 'B1').map(({ part, quantity }) => [part, quantity]),
    ).toEqual([
      ['ring', 6],
      ['cap', 4],
    ]);
  });

  it('tells open jobs, cancelled jobs and jobs with a finish that is unknown apart', () => {
    const open = withCell('Ready', '').map((cell) => (cell === 'done' ? 'in progress' : cell));
    const cancelled = open.map((cell) =>
      cell === 'B1' ? 'B2' : cell === 'in progress' ? 'storniert' : cell,
    );
    const before = ['B3', '2026-03-12 10:00', 'ring', '4', '2026-03-11 10:00', 'done', ''];
    const log = readJobs(table(open, cancelled, before));
    const states = log.jobs.slice(-3).map(({ isOpen, cancelled: is, finished }) => [isOpen, is, finished]);
    expect(states).toEqual([
      [true, false, null],
      [false, true, null],
      [false, false, null],
    ]);
    expect(rowsWith(log, 'open')).toEqual([14]);
    expect(rowsWith(log, 'cancelled')).toEqual([15]);
    expect(rowsWith(log, 'finished before asked')).toEqual([16]);
  });

  it('counts a date alone from midnight when asked for, and to the end of the day when finished', () => {
    const log = readJobs(table(['B1', '2026-03-12', 'ring', '1', '2026-03-12', 'done', '']));
    expect(log.jobs.find(({ name }) => name === 'B1')).toMatchObject({
      asked: at('2026-03-12T00:00'),
      askedHasClock: false,
      finished: at('2026-03-12T23:59'),
      finishedHasClock: false,
    });
    expect(rowsWith(log, 'finished before asked')).toEqual([]);
  });

  it('counts cells that cannot be read, and goes on without them', () => {
    const log = readJobs(
      table(
        withCell('Asked', 'as always'),
        withCell('Asked', ''),
        withCell('Ready', '31.02.2026'),
        withCell('Quantity', 'some'),
        withCell('Quantity', '2,5'),
        withCell('Part', ' '),
      ).map((row, index) => (index < 14 ? row : row.map((cell) => (cell === 'B1' ? `C${index}` : cell)))),
    );
    expect(rowsWith(log, 'unreadable date')).toEqual([14, 16]);
    expect(rowsWith(log, 'no date')).toEqual([15]);
    expect(rowsWith(log, 'unreadable number')).toEqual([17, 18]);
    expect(rowsWith(log, 'no part')).toEqual([19]);
    expect(log.jobs).toHaveLength(16);
    expect(log.jobs.find(({ row }) => row === 16)).toMatchObject({ finished: null, isOpen: false });
    expect(log.jobs.find(({ row }) => row === 19)?.part).toBe('unnamed part');
  });

  it('leaves out what is asked for long after all the others, as a slip of the year is', () => {
    const log = readJobs(table(withCell('Asked', '2062-03-12 10:00')));
    expect(log.jobs).toHaveLength(13);
    const many = Array.from({ length: 300 }, (_, index) => [
      `D${index}`,
      '2026-03-10 08:00',
      'ring',
      '1',
      '',
      'open',
      '',
    ]);
    const longer = readJobs(table(withCell('Asked', '2062-03-12 10:00'), ...many));
    expect(rowsWith(longer, 'outside the period')).toEqual([14]);
    expect(longer.until).toBe(at('2026-03-14T15:01'));
  });

  it('carries names of requesters only when asked to', () => {
    expect(JSON.stringify(readJobs(table()))).not.toContain('Marten');
    expect(readJobs(table(), {}, { keepsRequesters: true }).jobs[0]?.requester).toBe('Bo Marten');
  });

  it('takes formulas and controls for plain text', () => {
    const log = readJobs(
      table(withCell('Part', '=HYPERLINK("http://x")'), withCell('Part', '\u001b[31m@ring\u202e')),
    );
    expect(rowsWith(log, 'formula')).toEqual([14]);
    expect(log.jobs.slice(-2).map(({ part }) => part)).toEqual(['=HYPERLINK("http://x")', '[31m@ring']);
  });

  it('leaves out cells behind the last heading', () => {
    const log = readJobs(table([...ROW, 'x'], [...withCell('No', 'B2'), '']));
    expect(rowsWith(log, 'too many cells')).toEqual([14]);
    expect(log.jobs).toHaveLength(14);
  });

  it('takes offsets to the wall clock of the lab, and counts hours that the clock shows twice or leaves out', () => {
    const log = readJobs(
      table(
        withCell('Asked', '2026-03-12T10:00:00Z'),
        ['B2', '2026-03-29 01:30', 'ring', '1', '', 'open', ''],
        ['B3', '2026-10-25 01:30', 'ring', '1', '', 'open', ''],
        ['B4', '2026-07-01T10:00:00+02:00', 'ring', '1', '', 'open', ''],
      ),
      {},
      { zone: 'Europe/Lisbon' },
    );
    const asked = log.jobs.slice(-4).map((job) => new Date(job.asked).toISOString().slice(0, 16));
    expect(asked).toEqual(['2026-03-12T10:00', '2026-03-29T02:30', '2026-07-01T09:00', '2026-10-25T01:30']);
    expect(rowsWith(log, 'hour left out')).toEqual([15]);
    expect(rowsWith(log, 'hour shown twice')).toEqual([16]);
  });

  it('takes a status that is no usual word for the stage of an open job', () => {
    const log = readJobs(table(['B1', '2026-03-12 10:00', 'ring', '1', '', 'washing', '']));
    expect(log.jobs.at(-1)).toMatchObject({ isOpen: true, stage: 'washing' });
  });
});
