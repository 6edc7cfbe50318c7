import { describe, expect, it } from 'vitest';
import { lab, people } from '../fixture/lab.ts';
import { dutiesOf, dutyHours } from './duties.ts';

const NIGHT = { fromHour: 23, toHour: 30 };
/** Monday to Friday from 22:00 to 06:00. */
const LATE = [0, 1, 2, 3, 4].map((day) => ({ fromHour: day * 24 + 22, toHour: day * 24 + 30 }));

const TWO_GROUPS = lab({
  calendars: [
    { name: 'day', weekly: [{ fromHour: 8, toHour: 16 }], closedDays: [7], extra: [] },
    { name: 'late', weekly: LATE, closedDays: [], extra: [] },
  ],
  people: [
    people('technicians', 2, ['all'], { leave: [{ person: 2, fromHour: 14 * 24, toHour: 15 * 24 }] }),
    people('guard', 1, ['look'], { calendar: 'late' }),
  ],
});

describe('Hours of people by the calendars', () => {
  const duties = dutiesOf(TWO_GROUPS, 4);
  const hours = dutyHours(TWO_GROUPS, duties, NIGHT);

  it('give each person windows of his own, without closed days and leave', () => {
    const mondays = duties.persons.map(({ person, stretches }) => [person, stretches.length]);
    expect(mondays).toEqual([
      ['technicians 1', 3],
      ['technicians 2', 2],
      ['guard 1', 20],
    ]);
  });

  it('count the roster, night hours, lone hours and hours with nobody there', () => {
    expect(hours.persons).toBe(3);
    // Two persons for 8 h, one for 40 h, whatever is closed.
    expect(hours.roster).toBe(56);
    // Seven of eight hours of each of five nights.
    expect(hours.night).toBe(35);
    // Nights, and the third Monday on which the second technician is on leave.
    expect(hours.alone).toBe(40 + 8 / 4);
    // On four weeks' Mondays somebody comes three times.
    expect(hours.nobody).toBe(168 - 40 - (3 * 8) / 4);
  });

  it('give the mean number of persons in each hour of the week', () => {
    expect(hours.personsByHourOfWeek[8]).toBe(5 / 4);
    expect(hours.personsByHourOfWeek[22]).toBe(1);
    expect(hours.personsByHourOfWeek[24 + 5]).toBe(1);
    expect(hours.personsByHourOfWeek[24 + 6]).toBe(0);
    const sum = hours.personsByHourOfWeek.reduce((total, count) => total + count, 0);
    expect(sum).toBeCloseTo(40 + (5 * 8) / 4, 9);
  });

  it('make a night shorter in which the clock goes forward', () => {
    const changed = { ...TWO_GROUPS, clockChanges: [{ atHours: 25, localMinusElapsedHours: 1 }] };
    const { night } = dutyHours(changed, dutiesOf(changed, 4), NIGHT);
    expect(night).toBe(35 - 1 / 4);
  });
});
