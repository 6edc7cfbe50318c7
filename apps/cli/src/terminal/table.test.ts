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
});
