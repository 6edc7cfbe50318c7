import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textLines } from './text-lines.ts';
import { seenFromLeft } from './writing-direction.ts';

/** Every letter is one point wide. */
const measure = (text: string): number => Array.from(text).length;

describe('lines of a text', () => {
  it('end at spaces, and inside a word only where it is wider than a line', () => {
    expect(textLines('one two three', 7, measure)).toEqual(['one two', 'three']);
    expect(textLines('a verylongword b', 5, measure)).toEqual(['a', 'veryl', 'ongwo', 'rd b']);
    expect(textLines('first\nsecond', 20, measure)).toEqual(['first', 'second']);
  });

  it('are never wider than they may be, and lose no letter', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 300 }), fc.integer({ min: 1, max: 60 }), (text, width) => {
        const lines = textLines(text, width, measure);
        expect(lines.every((line) => measure(line) <= width)).toBe(true);
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll('\n', '').replaceAll(' ', ''));
      }),
    );
  });
});

describe('words that run from right to left', () => {
  it('stand in their own order where they follow each other, numbers and other words where they are', () => {
    expect(seenFromLeft('plain words')).toBe('plain words');
    expect(seenFromLeft('מכסה עדשה קטן')).toBe('קטן עדשה מכסה');
    expect(seenFromLeft('part מכסה עדשה 4.1 days')).toBe('part עדשה מכסה 4.1 days');
  });
});
