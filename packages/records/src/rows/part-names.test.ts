import { describe, expect, it } from 'vitest';
import { PartBook } from './part-names.ts';

describe('PartBook', () => {
  it('puts spellings of one name together under the most usual one', () => {
    const book = new PartBook({}, []);
    const keys = ['Drill jig', 'drill-jig', 'DRILL JIG', 'drill-jig', 'drill jig.stl'].map((name) =>
      book.take(name, ''),
    );
    expect(new Set(keys).size).toBe(1);
    const { nameOf, names } = book.names();
    expect(nameOf.get(keys[0] ?? '')).toBe('drill-jig');
    expect(names.respelled).toEqual([
      { name: 'drill-jig', spellings: ['Drill jig', 'DRILL JIG', 'drill jig'] },
    ]);
  });

  it('gives the names that the user or a scenario gives', () => {
    const book = new PartBook({ 'Geh. A': 'housing' }, ['Drill jig', 'housing']);
    const names = ['geh a', 'HOUSING', 'drill_jig'].map((written) => {
      const key = book.take(written, '');
      return book.names().nameOf.get(key);
    });
    expect(names).toEqual(['housing', 'housing', 'Drill jig']);
  });

  it('puts rare names together by their process where there are only names of files', () => {
    const book = new PartBook({}, ['known']);
    const keys = Array.from({ length: 60 }, (_, index) =>
      book.take(`part_${index}.stl`, index < 40 ? 'resin' : ''),
    );
    const frequent = Array.from({ length: 10 }, () => book.take('ring', 'resin'));
    const known = book.take('known', 'resin');
    const { nameOf, names } = book.names();
    expect(nameOf.get(keys[0] ?? '')).toBe('other resin parts');
    expect(nameOf.get(keys[59] ?? '')).toBe('other parts');
    expect(nameOf.get(frequent[0] ?? '')).toBe('ring');
    expect(nameOf.get(known)).toBe('known');
    expect(names.grouped).toEqual([
      { name: 'other resin parts', names: 40, jobs: 40 },
      { name: 'other parts', names: 20, jobs: 20 },
    ]);
  });

  it('leaves rare names alone where there are few', () => {
    const book = new PartBook({}, []);
    const key = book.take('once', '');
    for (let index = 0; index < 500; index++) book.take('often', '');
    expect(book.names().nameOf.get(key)).toBe('once');
  });
});
