import { describe, expect, it } from 'vitest';
import { momentText } from './moment.ts';

describe('momentText', () => {
  it('tells the day of the week and the time, to the minute', () => {
    expect(momentText('2027-03-01', 31.2)).toBe('Tue 07:12');
    expect(momentText('2027-03-01', 167.999)).toBe('Mon 00:00');
  });

  it('gives the date where the moment lies outside the week', () => {
    expect(momentText('2027-03-01', -2)).toBe('Sun 28 Feb 22:00');
    expect(momentText('2027-03-01', 168)).toBe('Mon 8 Mar 00:00');
  });
});
