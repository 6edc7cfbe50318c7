import { describe, expect, it } from 'vitest';
import { dayText, momentText, timeOfDayText } from './moment-words.ts';

describe('A moment of the lab in words', () => {
  it('is a day of the week with its date and time', () => {
    // 1 March 2027 is a Monday.
    expect(momentText('2027-03-01 09:30')).toBe('Mon 1 Mar 09:30');
    expect(dayText('2027-02-28 00:00')).toBe('Sunday 28 February');
    expect(timeOfDayText('2027-03-01 09:30')).toBe('09:30');
  });
});
