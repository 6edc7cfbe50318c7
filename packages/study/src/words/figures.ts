import type { Estimate, Prediction } from '@buildweek/results';

const HOURS_PER_DAY = 24;

interface Unit {
  readonly size: number;
  readonly word: string;
}

/** Lead times below two days are told in hours. */
function unitFor(hours: number): Unit {
  return hours < 2 * HOURS_PER_DAY ? { size: 1, word: 'hours' } : { size: HOURS_PER_DAY, word: 'days' };
}

/** `2.9 days (2.7 to 3.1)`; days are 24 hours by the clock. */
export function durationWords(estimate: Estimate): string {
  const unit = unitFor(estimate.value);
  return `${decimal(estimate.value / unit.size)} ${unit.word} (${rangeIn(estimate, unit.size)})`;
}

/** `2.1 to 3.8 days`. */
export function rangeWords(interval: Prediction): string {
  const unit = unitFor(interval.high);
  return `${rangeIn(interval, unit.size)} ${unit.word}`;
}

/** `0.6 (0.5 to 0.7)`, in the unit that suits a whole of `hours`. */
export function partOfDurationWords(estimate: Estimate, hours: number): string {
  const unit = unitFor(hours);
  return `${decimal(estimate.value / unit.size)} (${rangeIn(estimate, unit.size)})`;
}

/** `93 % (91 to 94)`. */
export function shareWords(estimate: Estimate): string {
  return `${percent(estimate.value)} % (${percent(estimate.low)} to ${percent(estimate.high)})`;
}

/** `85 to 98 %`. */
export function shareRangeWords(interval: Prediction): string {
  return `${percent(interval.low)} to ${percent(interval.high)} %`;
}

/** A share in per cent, whole, with one decimal below ten and close to a hundred. */
export function percent(share: number): string {
  const value = 100 * share;
  return (value !== 0 && value < 10) || (value > 99 && value < 100) ? value.toFixed(1) : value.toFixed(0);
}

function rangeIn(interval: { readonly low: number; readonly high: number }, size: number): string {
  return `${decimal(interval.low / size)} to ${decimal(interval.high / size)}`;
}

function decimal(value: number): string {
  const text = value.toFixed(Math.abs(value) < 0.1 ? 2 : 1);
  return Number(text) === 0 ? '0' : text;
}
