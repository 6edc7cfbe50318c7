import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withDigits, writtenNumber } from './written-number.ts';

describe('writtenNumber', () => {
  it.each([
    [7.41237, 0.2, '7.41'],
    [7.41237, 3, '7.4'],
    [7.4, 200, '7.4'],
    [158.73, 12, '159'],
    [1234.5, 900, '1230'],
    [0.0312345, 0.0012, '0.0312'],
    [10.96, 0.157, '10.96'],
    [0.00000123456, null, '0.000001235'],
    [123_456, 1e-9, '123460'],
    [7.5, 0, '7.5'],
    [0, null, '0'],
  ])('writes %d with a standard error of %s as %s', (value, error, text) => {
    expect(writtenNumber(value, error)).toBe(text);
  });

  it('moves no number by more than a twentieth of its standard error, unless that takes more than five digits', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 1e5, noNaN: true }),
        fc.double({ min: 1e-3, max: 10, noNaN: true }),
        (value, relativeError) => {
          const error = relativeError * value;
          const text = writtenNumber(value, error);
          expect(text).toMatch(/^\d+(\.\d*[1-9])?$/);
          expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.05 * error + 0.5e-4 * value);
        },
      ),
      { seed: 20270301 },
    );
  });
});

describe('withDigits', () => {
  it('leaves no zeros behind, and does not end at a rounding that carries over', () => {
    expect(withDigits(9.96, 2)).toBe('10');
    expect(withDigits(0.0999, 2)).toBe('0.1');
    expect(withDigits(6, 3)).toBe('6');
  });
});
