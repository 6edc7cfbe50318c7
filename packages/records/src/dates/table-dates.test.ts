import { describe, expect, it } from 'vitest';
import { OrderEvidence } from './order-evidence.ts';
import { checkOffsets, decidedOrder, TableDates } from './table-dates.ts';

function evidenceOf(...cells: string[]): OrderEvidence {
  const evidence = new OrderEvidence();
  cells.forEach((cell, index) => {
    evidence.look(cell, index + 2);
  });
  return evidence;
}

describe('The order of day and month', () => {
  it.each([
    ['a first number above 12', ['03/04/2026', '25/03/2026'], 'day first'],
    ['a second number above 12', ['03/04/2026', '03/25/2026'], 'month first'],
    ['dots, with which the month never comes first', ['03.04.2026', '05.06.2026'], 'day first'],
    ['dots, one date of which has equal numbers', ['03.04.2026', '05.05.2026'], 'day first'],
    ['nothing, and is not needed, when the year comes first', ['2026-03-04'], null],
  ])('is told by %s', (_, cells, order) => {
    expect(decidedOrder(evidenceOf(...cells), 'dates')).toBe(order);
  });

  it('is told by nearly all dates when a few in a hundred contradict', () => {
    const cells = Array.from({ length: 99 }, () => '25/03/2026');
    expect(decidedOrder(evidenceOf(...cells, '03/25/2026'), 'dates')).toBe('day first');
  });

  it('is refused where it cannot be told, with the first such row and what to write', () => {
    const evidence = evidenceOf('01/01/2026', '03/04/2026', '04/03/2026');
    expect(() => decidedOrder(evidence, 'dates')).toThrow(
      expect.objectContaining({
        message: 'It cannot be told which number is the day and which the month.',
        row: 3,
        found: '03/04/2026',
        write: '"dates: day first" or "dates: month first" in a mapping file (--mapping FILE)',
      }),
    );
  });

  it('is refused where half of the dates contradict the other half', () => {
    expect(() => decidedOrder(evidenceOf('25/03/2026', '03/25/2026'), 'dates')).toThrow(
      'Some dates have the day first, others the month.',
    );
  });
});

describe('TableDates', () => {
  it('takes midnights for dates alone in a column without other clocks', () => {
    const dates = new TableDates('day first', null);
    expect(dates.read('2026-03-04 00:00', false)).toMatchObject({ hasClock: false });
    expect(dates.read('2026-03-04 00:00', true)).toMatchObject({ hasClock: true });
  });

  it('reads no date that this order does not have', () => {
    expect(new TableDates('month first', null).read('25/03/2026', true)).toBeNull();
  });
});

describe('Offsets from universal time', () => {
  const cells = (...texts: string[]) => texts.map((cell, row) => ({ row, cell }));

  it('say nothing of the hours of a lab whose zone is not known', () => {
    expect(() => checkOffsets(cells('', '2026-03-04T09:15Z'))).toThrow(
      'These times are universal time, and the zone of the lab is not known.',
    );
  });

  it('are those of the lab where they are not all zero', () => {
    expect(() => checkOffsets(cells('2026-01-04T09:15+00:00', '2026-07-04T09:15+01:00'))).not.toThrow();
    expect(() => checkOffsets(cells('2026-01-04T09:15'))).not.toThrow();
  });
});
