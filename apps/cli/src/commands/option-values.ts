import { PRECISION_MEASURES, type PrecisionAsked } from '@buildweek/model';
import { InvalidArgumentError } from 'commander';

/** Reads a whole number of at least `fewest`. */
export function wholeNumberOption(fewest: number): (text: string) => number {
  return (text) => {
    if (/^\d+$/.test(text) && Number(text) >= fewest && Number(text) <= 1_000_000) return Number(text);
    throw new InvalidArgumentError(`Give a whole number from ${fewest} to 1000000.`);
  };
}

/** Gathers an option that may be given again. */
export function gathered(value: string, before: readonly string[]): readonly string[] {
  return [...before, value];
}

/** Reads `1, 5, 20, 100`. */
export function quantitiesOption(text: string): number[] {
  const quantities = text.split(/[\s,]+/).filter((part) => part !== '');
  const isRight = quantities.every(
    (part) => /^\d+$/.test(part) && Number(part) >= 1 && Number(part) <= 10_000,
  );
  if (quantities.length > 0 && quantities.length <= 12 && isRight) {
    return [...new Set(quantities.map(Number))].sort((a, b) => a - b);
  }
  throw new InvalidArgumentError('Give up to twelve whole numbers from 1 to 10000, as 1,5,20,100.');
}

export function ignoredWeeksOption(text: string): number | 'auto' {
  if (text === 'auto') return text;
  if (/^\d+$/.test(text) && Number(text) <= 10_000) return Number(text);
  throw new InvalidArgumentError('Give a whole number of weeks from 0 to 10000, or auto.');
}

/** Reads `5 % of p90 lead time`, or `5 %` for the precision of p90. */
export function precisionOption(text: string): PrecisionAsked {
  const parts = /^\s*(\d+(?:\.\d+)?)\s*%\s*(?:of\s+(.+?)\s*)?$/.exec(text);
  const share = Number(parts?.[1]) / 100;
  const measure = PRECISION_MEASURES.find((candidate) => candidate === (parts?.[2] ?? 'p90 lead time'));
  if (measure !== undefined && share > 0 && share < 1) return { measure, relativeHalfWidth: share };
  throw new InvalidArgumentError(
    `Give it as "5 % of p90 lead time". Known: ${PRECISION_MEASURES.join(', ')}.`,
  );
}

/** Reads a share, `2 %`. */
export function shareOption(text: string): number {
  const share = Number(/^\s*(\d+(?:\.\d+)?)\s*%\s*$/.exec(text)?.[1]) / 100;
  if (share > 0 && share < 1) return share;
  throw new InvalidArgumentError('Give a share between 0 and 100 %, as "2 %".');
}

/** Reads an amount of money, `250000` or `250 000`. */
export function amountOption(text: string): number {
  const amount = Number(text.replace(/[\s\u202f']/g, ''));
  if (text.trim() !== '' && Number.isFinite(amount) && amount > 0) return amount;
  throw new InvalidArgumentError('Give an amount of money above 0, as 250000.');
}

/** Reads `2026-10-04` as the civil time at which that day begins. */
export function dayOption(text: string): number {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  // A day that does not exist, such as 30 February, is taken for a later one.
  if (!Number.isNaN(time) && new Date(time).toISOString().startsWith(text)) return time;
  throw new InvalidArgumentError('Give a day as 2026-10-04.');
}
