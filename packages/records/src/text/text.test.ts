import { describe, expect, it } from 'vitest';
import { fromWindows1252, guessEncoding, notText } from './encoding.ts';
import { plainWords } from './plain-words.ts';
import { readNumber } from './read-number.ts';
import { guessSeparator } from './separator.ts';

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('guessSeparator', () => {
  it.each([
    ['a;b,c;d\n1;2,5;3\n', ';'],
    ['a,b,c\n1,2,3\n', ','],
    ['a\tb c, d\tc\n1\t2\t3\n', '\t'],
    ['a|b|c\n1|2|3\n', '|'],
    ['"a,b,c,d";x\n"1,2,3";4\n', ';'],
    ['a;"b\n;;;";c\n1;2;3\n', ';'],
    ['Requests, 2026\n\na;b;c\n1;2;3\n4;5;6\n', ';'],
    ['sep=|\na;b;c\n', '|'],
    ['one word\nanother\n', null],
    ['', null],
  ])('of %j is %j', (text, separator) => {
    expect(guessSeparator(text)).toBe(separator);
  });
});

describe('readNumber', () => {
  it.each([
    ['12', true, 12],
    ['12,0', true, 12],
    ['1.234', true, 1234],
    ['1.234', false, 1.234],
    ['1.234,5', false, 1234.5],
    ['1,234.5', false, 1234.5],
    ['1.234.567', false, 1_234_567],
    ["1'234", true, 1234],
    ['1 234', true, 1234],
    ['3 pcs', true, 3],
    ['12 Stk.', true, 12],
    ['ca. 5', true, 5],
    ['-2', false, -2],
    ['PA12', true, null],
    ['12 or 13', true, null],
    ['', true, null],
    [`1${'0'.repeat(5000)}x!`, true, null],
  ])('of %j is %j', (cell, expectsWhole, value) => {
    expect(readNumber(cell, expectsWhole)).toBe(value);
  });
});

describe('guessEncoding', () => {
  it.each([
    ['\u00ff\u00fea\u0000', 'utf-16le'],
    ['\u00fe\u00ff\u0000a', 'utf-16be'],
    ['a\u0000b\u0000c\u0000', 'utf-16le'],
    ['\u0000a\u0000b\u0000c', 'utf-16be'],
    ['abc;def', 'utf-8'],
  ])('of %j is %s', (text, encoding) => {
    expect(guessEncoding(bytes(text))).toBe(encoding);
  });
});

describe('notText', () => {
  it.each([
    ['PK\u0003\u0004rest', 'a workbook or another packed file'],
    ['%PDF-1.7', 'a PDF'],
    ['\u007fELF\u0002\u0001\u0001\u0000abcdefghijklmnopqrst\u0000', 'a file that is no text'],
    ['a;b;c\n', null],
  ])('of %j is %s', (text, kind) => {
    expect(notText(bytes(text))).toBe(kind);
  });
});

describe('fromWindows1252', () => {
  it('has letters where ISO 8859-1 has controls', () => {
    expect(fromWindows1252('St\u00fcck \u0080 \u0093x\u0094')).toBe('Stück € “x”');
  });
});

describe('plainWords', () => {
  it.each([
    ['Priorität', 'prioritat'],
    ['  Date_of-Request (UTC) ', 'date of request utc'],
    ['BauteilTyp', 'bauteil typ'],
    ['Größe', 'grosse'],
    ['N° de pièces', 'n de pieces'],
  ])('of %j are %j', (text, plain) => {
    expect(plainWords(text)).toBe(plain);
  });
});
