import { describe, expect, it } from 'vitest';
import { columnGroups, columnWidths } from './column-widths.ts';

const columns = (...least: number[]) => least.map((one) => ({ least: one, most: 2 * one }));

describe('widths of columns', () => {
  it('are what the columns want where that fits, and share what there is where it does not', () => {
    expect(columnWidths(columns(10, 20), 100)).toEqual([20, 40]);
    expect(columnWidths(columns(10, 20), 45)).toEqual([15, 30]);
    expect(columnWidths(columns(10, 20), 29)).toBeNull();
  });

  it('make a table that is too wide into several with the first column in each, none with a single column left over', () => {
    expect(columnGroups(columns(10, 10, 10, 10, 10, 10, 10), 60)).toEqual([
      [0, 1, 2, 3],
      [0, 4, 5, 6],
    ]);
    expect(columnGroups(columns(10, 50, 50), 60)).toEqual([
      [0, 1],
      [0, 2],
    ]);
  });
});
