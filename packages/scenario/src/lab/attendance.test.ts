import type { PeopleGroup, WorkingCalendar } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { Attendance } from './attendance.ts';

const calendar = (name: string, ...weekly: [number, number][]): WorkingCalendar => ({
  name,
  weekly: weekly.map(([fromHour, toHour]) => ({ fromHour, toHour })),
  closedDays: [],
  extra: [],
});
const group = (name: string, count: number, hours: string): PeopleGroup => ({
  name,
  count,
  calendar: hours,
  skills: ['sand'],
  otherDutiesShare: 0,
  graceHours: 0,
  leave: [],
  absence: null,
});

describe('the longest stretch of attendance', () => {
  const calendars = [
    calendar('early', [6, 14]),
    calendar('late', [12, 20]),
    calendar('night', [22, 30], [30, 34]),
    calendar('always', [0, 168]),
    calendar('never'),
  ];

  it('is bounded by breaks; windows that touch are one', () => {
    expect(new Attendance([group('a', 1, 'early')], calendars, 'sand').longestHours(1)).toBe(8);
    expect(new Attendance([group('a', 1, 'night')], calendars, 'sand').longestHours(1)).toBe(12);
    expect(new Attendance([group('a', 1, 'always')], calendars, 'sand').longestHours(1)).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  it('goes on over the end of the week', () => {
    const week = calendar('weekend', [0, 5], [160, 168]);
    expect(new Attendance([group('a', 1, 'weekend')], [week], 'sand').longestHours(1)).toBe(13);
  });

  it('of several people is the time in which all of them are there', () => {
    const people = [group('a', 1, 'early'), group('b', 2, 'late')];
    const attendance = new Attendance(people, calendars, 'sand');
    expect([1, 2, 3, 4].map((persons) => attendance.longestHours(persons))).toEqual([8, 8, 2, 0]);
    expect(attendance.persons).toBe(3);
  });

  it('is zero for those who never come and for skills that nobody has', () => {
    expect(new Attendance([group('a', 1, 'never')], calendars, 'sand').longestHours(1)).toBe(0);
    expect(new Attendance([group('a', 1, 'early')], calendars, 'weld').longestHours(1)).toBe(0);
  });

  it('does not grow with the number of people', () => {
    expect(new Attendance([group('a', 1e9, 'early')], calendars, 'sand').longestHours(1e9)).toBe(8);
  });
});
