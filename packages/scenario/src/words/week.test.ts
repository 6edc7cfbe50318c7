import { describe, expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { weekdays, windows } from './week.ts';

describe('days of the week', () => {
  it.each([
    ['mon', [0]],
    ['mon-fri', [0, 1, 2, 3, 4]],
    ['tue, thu', [1, 3]],
    ['sat and sun', [5, 6]],
    ['fri-mon', [0, 4, 5, 6]],
    ['Monday-Wednesday', [0, 1, 2]],
    ['weekdays', [0, 1, 2, 3, 4]],
    ['daily', [0, 1, 2, 3, 4, 5, 6]],
  ])('"%s" are understood', (text, days) => {
    expect(weekdays(text)).toEqual(days);
  });

  it.each([
    ['mom', 'mon'],
    ['mon-fry', 'mon-fri'],
    ['wensday', 'wed'],
    ['mond', 'mon'],
    ['holidays', 'mon-fri'],
  ])('"%s" are refused, and "%s" proposed', (text, write) => {
    expect(refusal(weekdays, text).write).toBe(write);
  });
});

describe('windows of a day', () => {
  it('are read one after the other', () => {
    expect(windows('07:00-11:30 12:00-15:30')).toEqual([
      { fromHour: 7, toHour: 11.5 },
      { fromHour: 12, toHour: 15.5 },
    ]);
    expect(windows('07:00 - 11:30, 12:00 – 24:00')).toEqual([
      { fromHour: 7, toHour: 11.5 },
      { fromHour: 12, toHour: 24 },
    ]);
  });

  it('may reach into the next day', () => {
    expect(windows('22:00-06:00')).toEqual([{ fromHour: 22, toHour: 30 }]);
  });

  it.each([
    [
      '16:00-09:00',
      'The window 16:00-09:00 runs backwards (past midnight it would be 17 hours long).',
      '09:00-16:00',
    ],
    ['08:00-08:00', 'The window 08:00-08:00 is empty.', '00:00-24:00'],
    ['8-16', '"8" is not a time of day.', '8:00-16:00'],
    ['08:00', '"08:00" is not a window.', '08:00-16:00'],
    ['', 'There is no window.', '08:00-16:00'],
  ])('"%s" are refused', (text, message, write) => {
    expect(refusal(windows, text)).toMatchObject({ message, write });
  });
});
