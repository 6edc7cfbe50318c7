import { words, wordsOrList } from './keys.ts';
import { z } from './zod.ts';

const closed = wordsOrList(
  'Days on which nobody comes, or a calendar file (RFC 5545) with them as whole days',
  '2027-04-02',
  '2027-12-24 to 2028-01-01',
  'from holidays.ics',
);

/** The windows of a week. */
const calendarSchema = z
  .object({
    closed: closed.optional(),
    extra: wordsOrList('Additional windows on single dates', '2027-03-06 08:00-12:00').optional(),
  })
  .catchall(wordsOrList('Windows of these days', '07:00-11:30 12:00-15:30'))
  .meta({
    description: 'Days (mon, mon-fri, "tue, thu", weekdays, daily) with their windows',
    examples: [{ 'mon-fri': '07:00-11:30 12:00-15:30' }],
  });

export const hoursSchema = z
  .object({ closed: closed.optional() })
  .catchall(
    z.union([
      words(
        'Day and night, or the events of a calendar file (RFC 5545), all or those whose name begins so',
        'always',
        'from shifts.ics',
        'from shifts.ics, events Early',
      ),
      calendarSchema,
    ]),
  )
  .meta({ description: 'Working hours by name, and the days on which everything is closed' });

/** Where hours are referred to. */
export const hoursReference = z
  .union([words('Name of hours, or always', 'day', 'always'), calendarSchema])
  .meta({ description: 'Name of hours, always (day and night), or the windows themselves' });
