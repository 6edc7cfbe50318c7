import { describe, expect, it } from 'vitest';
import { cellPlace, separatorOf } from './csv-line.ts';

describe('separatorOf', () => {
  it.each([
    ['build\tpart;type\tpieces', '\t'],
    ['build;part, as printed;pieces', ';'],
    ['build,part,pieces', ','],
    ['"build;name",part', ','],
    ['build', ','],
  ])('of %j is %j', (header, separator) => {
    expect(separatorOf(header)).toBe(separator);
  });
});

describe('cellPlace', () => {
  it('finds a cell without the spaces around it', () => {
    expect(cellPlace('17;  ring ; 4', 1, ';')).toEqual({ column: 6, length: 4 });
  });

  it('passes over separators that are quoted', () => {
    expect(cellPlace('"a,b",ring,"5,3"', 2, ',')).toEqual({ column: 12, length: 5 });
  });

  it('points at the place of an empty cell, and behind the line where a cell is not there', () => {
    expect(cellPlace('17;;4', 1, ';')).toEqual({ column: 4, length: 1 });
    expect(cellPlace('17', 3, ';')).toEqual({ column: 3, length: 1 });
  });
});
