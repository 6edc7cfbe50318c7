const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MINUTES_PER_HOUR = 60;
const MINUTES_PER_DAY = 24 * MINUTES_PER_HOUR;
const MINUTES_PER_WEEK = 7 * MINUTES_PER_DAY;

/**
 * "Mon 09:24", and "Mon 09:24, week 2" from the second week on.
 *
 * @param hour hours since Monday 00:00, local time
 */
export function clockTime(hour: number): string {
  const minutes = Math.round(hour * MINUTES_PER_HOUR);
  const two = (value: number): string => String(value).padStart(2, '0');
  const inDay = minutes % MINUTES_PER_DAY;
  const day = WEEKDAYS[Math.floor((minutes % MINUTES_PER_WEEK) / MINUTES_PER_DAY)] ?? '';
  const week = Math.floor(minutes / MINUTES_PER_WEEK);
  const time = `${day} ${two(Math.floor(inDay / MINUTES_PER_HOUR))}:${two(inDay % MINUTES_PER_HOUR)}`;
  return week === 0 ? time : `${time}, week ${week + 1}`;
}
