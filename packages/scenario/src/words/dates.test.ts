import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { clockTime, date, dateSpan, dateText, dateTime, monday, weekdayOf } from './dates.ts';

describe('a date', () => {
  it.each([
    ['2027-02-30', 'The date 2027-02-30 does not exist.', '2027-02-28'],
    ['2027-13-01', 'The date 2027-13-01 does not exist.', '2027-03-01'],
    ['2027-02-29', 'The date 2027-02-29 does not exist.', '2027-02-28'],
    ['24.12.2027', '"24.12.2027" is not a date.', '2027-12-24'],
    ['2027/3/1', '"2027/3/1" is not a date.', '2027-03-01'],
    ['tomorrow', '"tomorrow" is not a date.', '2027-03-01'],
  ])('"%s" is refused', (text, message, write) => {
    expect(refusal(date, text)).toMatchObject({ message, write });
  });

  it('goes to a day number and back', () => {
    expect(dateText(date('2028-02-29'))).toBe('2028-02-29');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60_000 }), (day) => {
        expect(date(dateText(day))).toBe(day);
        // The calendar of the platform, which counts Sunday as 0.
        expect(weekdayOf(day)).toBe((new Date(day * 86_400_000).getUTCDay() + 6) % 7);
      }),
    );
  });

  it('of the start has to be a Monday, and the Monday before is proposed', () => {
    expect(dateText(monday('2027-03-01'))).toBe('2027-03-01');
    expect(refusal(monday, '2027-03-03')).toMatchObject({
      message: '2027-03-03 is a Wednesday.',
      write: '2027-03-01',
    });
    expect(refusal(monday, '2027-03-07')).toMatchObject({
      message: '2027-03-07 is a Sunday.',
      write: '2027-03-01',
    });
  });

  it('can be a stretch of days', () => {
    expect(dateSpan('2027-12-30 to 2028-01-02').map(dateText)).toEqual([
      '2027-12-30',
      '2027-12-31',
      '2028-01-01',
      '2028-01-02',
    ]);
    expect(refusal(dateSpan, '2028-01-02 to 2027-12-30').write).toBe('2027-12-30 to 2028-01-02');
    expect(refusal(dateSpan, '2028-01-02 to 2128-01-02').message).toBe('This spans more than ten years.');
  });

  it('can have a time of day', () => {
    expect(dateTime('2027-03-01 09:30')).toEqual({ day: date('2027-03-01'), hour: 9.5 });
    expect(dateTime('2027-03-01T09:30')).toEqual({ day: date('2027-03-01'), hour: 9.5 });
    expect(refusal(dateTime, '2027-03-01').write).toBe('2027-03-01 09:00');
  });
});

describe('a time of day', () => {
  it('runs from 00:00 to 24:00', () => {
    expect(['00:00', '7:30', '24:00'].map(clockTime)).toEqual([0, 7.5, 24]);
    expect(refusal(clockTime, '24:01').message).toBe('"24:01" is not a time of day.');
    expect(refusal(clockTime, '9').write).toBe('9:00');
    expect(refusal(clockTime, '9.30').write).toBe('9:30');
  });
});
