import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numbers, tableText, words } from './table.ts';

const plain = { heading: String, faint: String, warning: String };

describe('tableText', () => {
  it('puts words to the left and numbers to the right, under their titles', () => {
    const text = tableText(
      [words('machine'), numbers('load')],
      [{ cells: ['resin', '9 %'] }, { cells: ['a', '100 %'] }],
      plain,
    );
    expect(text.split('\n')).toEqual(['  machine   load', '  resin      9 %', '  a        100 %']);
  });

  it('sets notes below their row', () => {
    const text = tableText([words('machine')], [{ cells: ['resin'], under: 'full builds' }], plain);
    expect(text.split('\n').slice(1)).toEqual(['  resin', '    full builds']);
  });

  it('sets what stands over a row on a line of its own, and the cells in', () => {
    const text = tableText([numbers('load')], [{ over: 'resin: as today', cells: ['9 %'] }], plain);
    expect(text.split('\n')).toEqual(['    load', '  resin: as today', '     9 %']);
  });

  it('cuts very long names and takes the sting out of control characters', () => {
    const text = tableText([words('machine')], [{ cells: [`\u001b[31m${'x'.repeat(200)}`] }], plain);
    expect(text).toContain('·[31mxxx');
    expect(text.split('\n')[1]).toHaveLength(62);
  });

  it('breaks words and never figures where a terminal is narrow', () => {
    const text = tableText(
      [words('what'), numbers('load')],
      [{ cells: ['resin machines of the first floor', '100 %'], under: 'full builds, day and night' }],
      plain,
      26,
    );
    expect(text.split('\n')).toEqual([
      '  what                load',
      '  resin machines of  100 %',
      '  the first floor',
      '    full builds, day and',
      '    night',
    ]);
  });

  it('becomes sentences where even that is too wide', () => {
    const text = tableText(
      [words('what'), numbers('load'), numbers('nine of ten within'), numbers('note')],
      [{ cells: ['resin machines', '100 %', '4.1 (3.9 to 4.3)', ''] }],
      plain,
      36,
    );
    expect(text.split('\n')).toEqual([
      '  resin machines: load 100 %; nine',
      '    of ten within 4.1 (3.9 to 4.3)',
    ]);
  });

  it('names the first cell too, in such a sentence, where the name of the row stands above it', () => {
    const text = tableText(
      [numbers('load'), numbers('nine of ten within')],
      [{ over: 'resin machines', cells: ['100 %', '4.1 (3.9 to 4.3)'] }],
      plain,
      24,
    );
    expect(text.split('\n')).toEqual([
      '  resin machines',
      '    load 100 %; nine of',
      '      ten within 4.1 (3.9',
      '      to 4.3)',
    ]);
  });

  it('is never wider than the terminal, whatever stands in it', () => {
    const word = fc.string({ minLength: 0, maxLength: 70, unit: 'grapheme-ascii' });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(word, word, word), { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 30, max: 120 }),
        (rows, room) => {
          const cells = rows.map((row) => ({ cells: row }));
          const text = tableText([words('one'), numbers('two'), words('three')], cells, plain, room);
          expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(room);
        },
      ),
      { seed: 20261125 },
    );
  });
});
