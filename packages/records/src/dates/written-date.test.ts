import { describe, expect, it } from 'vitest';
import { type DateOrder, dayOf, writtenDate } from './written-date.ts';

function read(cell: string, order: DateOrder = 'day first'): string | null {
  const date = writtenDate(cell);
  const day = date === null ? null : dayOf(date, order);
  if (date === null || day === null) return null;
  const text = new Date(day * 86_400_000 + (date.clock ?? 0)).toISOString();
  const clock = date.clock === null ? '' : text.slice(10, 23).replace(/(:00)?\.000$/, '');
  const offset = date.offset === null ? '' : ` ${date.offset / 3_600_000}`;
  return text.slice(0, 10) + clock + offset;
}

describe('writtenDate', () => {
  it.each([
    ['2026-03-04', '2026-03-04'],
    ['2026-03-04T09:15', '2026-03-04T09:15'],
    ['2026-03-04 09:15:30', '2026-03-04T09:15:30'],
    ['2026-03-04T09:15:30.25Z', '2026-03-04T09:15:30.250 0'],
    ['2026-03-04T09:15+01:00', '2026-03-04T09:15 1'],
    ['2026-03-04T09:15-0530', '2026-03-04T09:15 -5.5'],
    ['20260304T091530Z', '2026-03-04T09:15:30 0'],
    ['20260304', '2026-03-04'],
    ['2026/3/4 9:05', '2026-03-04T09:05'],
    ['2026.03.04', '2026-03-04'],
    ['04.03.2026', '2026-03-04'],
    ['4.3.26', '2026-03-04'],
    ['04.03.2026, 9:15 Uhr', '2026-03-04T09:15'],
    ['Mi, 04.03.2026 09:15', '2026-03-04T09:15'],
    ['04/03/2026 9h15', '2026-03-04T09:15'],
    ['04-03-2026 09.15', '2026-03-04T09:15'],
    ['4/3/2026 12:05 am', '2026-03-04T00:05'],
    ['4/3/2026 12:05 p.m.', '2026-03-04T12:05'],
    ['4/3/2026 9pm', '2026-03-04T21:00'],
    ['4 March 2026', '2026-03-04'],
    ['4. März 2026 09:15', '2026-03-04T09:15'],
    ['March 4, 2026', '2026-03-04'],
    ['4 de marzo de 2026', '2026-03-04'],
    ['4 févr. 2026', '2026-02-04'],
    ['4 dic 2026', '2026-12-04'],
    ['46085', '2026-03-04'],
    ['46085.385416667', '2026-03-04T09:15'],
    ['46085,385416667', '2026-03-04T09:15'],
  ])('reads %s', (cell, expected) => {
    expect(read(cell)).toBe(expected);
  });

  it('takes 24:00 for the end of the day', () => {
    expect(writtenDate('2026-03-04 24:00')).toMatchObject({ second: 4, clock: 86_400_000 });
  });

  it('takes the month first where told so', () => {
    expect(read('04/03/2026 9:15', 'month first')).toBe('2026-04-03T09:15');
  });

  it.each([
    '',
    '12',
    '12345678',
    '31.02.2026',
    '13/13/2026',
    '2026-02-30',
    '04.03.2026 25:00',
    '04.03.2026 13:00 pm',
    '4.3.2026.1',
    '1.5.2',
    'PA12',
    'v2026-03-04',
    '4 Brackets 2026',
    '99999',
    '=2026-03-04',
  ])('takes %j for no date', (cell) => {
    expect(read(cell)).toBeNull();
  });

  it('does not take long texts for dates, however they begin', () => {
    expect(read(`2026-03-04 ${'9'.repeat(100_000)}`)).toBeNull();
    expect(read('4 '.repeat(100_000))).toBeNull();
  });
});
