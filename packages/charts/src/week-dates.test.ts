import { expect, test } from 'vitest';
import { dateOfWeek } from './week-dates.ts';

test('A week is named by its first day, across the ends of months and years.', () => {
  expect(dateOfWeek('2027-03-01', 5)).toEqual({ long: '29 March', short: '29 Mar' });
  expect(dateOfWeek('2027-12-27', 2)?.long).toBe('3 January');
  expect(dateOfWeek('2028-02-28', 2)?.short).toBe('6 Mar');
});

test('A start that is no date names no day.', () => {
  expect(dateOfWeek('<b>', 1)).toBeNull();
});
