import { formatNumber, type Spread } from '@buildweek/results';

interface ClockUnit {
  readonly name: string;
  readonly hours: number;
  readonly decimals: number;
}

const MINUTES: ClockUnit = { name: 'min', hours: 1 / 60, decimals: 0 };
const HOURS: ClockUnit = { name: 'h', hours: 1, decimals: 1 };
/** Of 24 hours by the clock. */
const DAYS: ClockUnit = { name: 'days', hours: 24, decimals: 1 };

const SHORTEST_IN_HOURS = 0.95;
const SHORTEST_IN_DAYS = 48;
/** Minutes below which a decimal says something. */
const FEW_MINUTES = 10;

/** `35 min`, `9.2 h`, `2.1 days`: by the clock. */
export function clockWords(hours: number): string {
  const unit = unitFor(hours);
  return `${inUnit(hours, unit)} ${unit.name}`;
}

/** `9.2 h (8.1 to 11.0)`: a value with what most plays lie between, all in one unit. */
export function clockSpreadWords({ typical, low, high }: Spread): string {
  const unit = unitFor(typical);
  return `${inUnit(typical, unit)} ${unit.name} (${inUnit(low, unit)} to ${inUnit(high, unit)})`;
}

/** `8.1 to 11.0 h`: what most plays lie between. */
export function clockRangeWords({ low, high }: Spread): string {
  const unit = unitFor(high);
  return `${inUnit(low, unit)} to ${inUnit(high, unit)} ${unit.name}`;
}

/** `35 min`, `6.4 min`. */
export function minutesWords(minutes: number): string {
  return `${inUnit(minutes * MINUTES.hours, MINUTES)} min`;
}

function unitFor(hours: number): ClockUnit {
  if (hours < SHORTEST_IN_HOURS) return MINUTES;
  return hours < SHORTEST_IN_DAYS ? HOURS : DAYS;
}

function inUnit(hours: number, unit: ClockUnit): string {
  const value = hours / unit.hours;
  const isFew = unit === MINUTES && value > 0 && value < FEW_MINUTES;
  return formatNumber(value, isFew ? 1 : unit.decimals);
}
