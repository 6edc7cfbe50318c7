import { describe, expect, it } from 'vitest';
import { csvText, harmlessCell } from './csv-text.ts';

describe('A table as CSV', () => {
  it('has quotes where a cell needs them, CR LF, and a byte-order mark', () => {
    expect(
      csvText([
        ['job', 'what'],
        ['a', 'say "no", twice'],
        [null, 2.5],
        ['two\nlines', -3],
      ]),
    ).toBe('\ufeffjob,what\r\na,"say ""no"", twice"\r\n,2.5\r\n"two\nlines",-3\r\n');
  });

  it('holds no cell that a spreadsheet would run, and leaves numbers alone', () => {
    for (const text of ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', ' =1', '|x', '%x', '＝1']) {
      expect(harmlessCell(text)).toMatch(/^'/);
    }
    expect(harmlessCell('a=1')).toBe('a=1');
    expect(csvText([[-1, '-1']])).toBe("\ufeff-1,'-1\r\n");
  });

  it('refuses numbers that are none', () => {
    expect(() => csvText([[Number.NaN]])).toThrow(RangeError);
  });
});
