import { describe, expect, it } from 'vitest';
import { clockRangeWords, clockSpreadWords, clockWords, minutesWords } from './clock-words.ts';

describe('Times by the clock in words', () => {
  it('are in minutes, hours or days of 24 hours', () => {
    expect([0, 0.1, 0.5, 1, 30, 47.9, 72].map(clockWords)).toEqual([
      '0 min',
      '6.0 min',
      '30 min',
      '1.0 h',
      '30.0 h',
      '47.9 h',
      '3.0 days',
    ]);
    expect(minutesWords(6.44)).toBe('6.4 min');
  });

  it('give a spread in one unit', () => {
    expect(clockSpreadWords({ typical: 48, low: 47.9, high: 50.4 })).toBe('2.0 days (2.0 to 2.1)');
    expect(clockSpreadWords({ typical: 9.2, low: 0.5, high: 60 })).toBe('9.2 h (0.5 to 60.0)');
    expect(clockRangeWords({ typical: 1, low: 0.5, high: 2 })).toBe('0.5 to 2.0 h');
  });
});
