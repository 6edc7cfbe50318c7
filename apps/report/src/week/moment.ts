const HOUR = 3_600_000;
const MINUTE = 60_000;
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/**
 * A moment by the clock on the wall of the lab: "Tue 07:12", with the date where it lies outside the week.
 *
 * @param monday date of the Monday of the week, YYYY-MM-DD
 * @param hour hours since its 00:00
 */
export function momentText(monday: string, hour: number): string {
  const date = new Date(Math.round((Date.parse(`${monday}T00:00Z`) + hour * HOUR) / MINUTE) * MINUTE);
  const day = WEEKDAYS[date.getUTCDay()] ?? '';
  const outside = hour < 0 || hour >= 168;
  const dated = outside ? `${day} ${date.getUTCDate()} ${MONTHS[date.getUTCMonth()] ?? ''}` : day;
  return `${dated} ${date.toISOString().slice(11, 16)}`;
}
