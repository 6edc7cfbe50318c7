import { expect, test } from 'vitest';
import { clockTime } from './clock-time.ts';

test('Hours of the week are told as day and time, those of later weeks with the week.', () => {
  expect([0, 9.4, 111, 167.999, 168 + 7].map(clockTime)).toEqual([
    'Mon 00:00',
    'Mon 09:24',
    'Fri 15:00',
    'Mon 00:00, week 2',
    'Mon 07:00, week 2',
  ]);
});
