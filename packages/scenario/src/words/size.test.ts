import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { size, sizeText } from './size.ts';

describe('a size', () => {
  it('is width, depth and height in mm; a unit holds for the numbers before it', () => {
    const box = { width: 42, depth: 30, height: 11.5 };
    for (const text of [
      '42 x 30 x 11.5 mm',
      '42 mm x 30 mm x 11.5 mm',
      '42 × 30 × 11.5 mm',
      '42 mm x 3 x 1.15 cm',
    ]) {
      expect(size(text)).toEqual(box);
    }
    expect(sizeText(box)).toBe('42 x 30 x 11.5 mm');
  });

  it.each([
    ['42x30x11 mm', 'The sides in "42x30x11 mm" run together.', '42 x 30 x 11 mm'],
    ['42x42', 'The sides in "42x42" run together.', '42 x 42'],
    ['42*30*11 mm', 'The sides in "42*30*11 mm" run together.', '42 x 30 x 11 mm'],
    ['42 x 30 mm', 'A size has three sides, and here are 2.', '42 x 42 x 11 mm'],
    ['42 mm', 'A size has three sides, and here is one.', '42 x 42 x 11 mm'],
    ['42 x 30 x 11', '"42 x 30 x 11" has no unit.', '42 x 30 x 11 mm'],
    ['42 x 30 x 0 mm', 'A box whose height is zero holds nothing.', '42 x 42 x 11 mm'],
    ['42 x -30 x 11 mm', 'It cannot be negative.', '42 x 42 x 11 mm'],
    ['4,2 x 30 x 11 mm', '"4,2" has a comma inside a number.', '4.2 x 30 x 11 mm'],
    ['42 x 30 x 11 inch', '"inch" is not a unit.', '42 x 42 x 11 mm'],
    ['42 x 30 x 11 mm3', '"mm3" measures a volume, and a length is needed here.', '42 x 30 x 11 mm'],
  ])('is refused with what to write: %s', (text, message, write) => {
    expect(refusal(size, text)).toMatchObject({ message, write });
  });
});
