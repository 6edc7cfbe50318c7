import { formatNumber, type Spread } from '@buildweek/results';

const HOURS_PER_DAY = 24;
const MINUTES_PER_HOUR = 60;

/** `35 min`, `9.2 h`, `2.1 days`: by the clock, days of 24 hours. */
export function clockWords(hours: number): string {
  if (hours < 0.95) return minutesWords(hours * MINUTES_PER_HOUR);
  return hours < 2 * HOURS_PER_DAY
    ? `${formatNumber(hours, 1)} h`
    : `${formatNumber(hours / HOURS_PER_DAY, 1)} days`;
}

/** `8.1 to 11.0 h`: what most plays lie between. */
export function clockRangeWords({ low, high }: Spread): string {
  const [from, to] = [clockWords(low), clockWords(high)];
  const [number = '', unit = ''] = from.split(' ');
  return to.endsWith(` ${unit}`) ? `${number} to ${to}` : `${from} to ${to}`;
}

/** `35 min`. */
export function minutesWords(minutes: number): string {
  return `${formatNumber(minutes, minutes < 10 ? 1 : 0)} min`;
}
