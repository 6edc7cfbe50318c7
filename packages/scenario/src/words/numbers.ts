import type { CountDistribution } from '@buildweek/model';
import { Phrase } from './phrase.ts';
import { toBase } from './units.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** So many people, machines, stations or carriers of one kind at most. */
export const MOST_ALIKE = 10_000;

/** A whole number. @param most larger ones are taken for a slip @throws WordingError */
export function wholeNumber(least: number, example: string, most = 1_000_000): Wording<number> {
  return (text) => {
    const expected = `a whole number from ${least} up`;
    const number = text === '' ? Number.NaN : Number(text);
    if (number > most) {
      throw new WordingError(
        `${text} is more than this program is made for.`,
        `${expected}, at most ${most}`,
        String(most),
      );
    }
    if (/^\d+(\.0+)?$/.test(text) && number >= least) return number;
    throw new WordingError(
      `"${text}" is not ${expected}.`,
      expected,
      number > least ? String(Math.round(number)) : example,
    );
  };
}

/** `3`, `1 to 12` (each equally likely), `geometric mean 3`. @throws WordingError */
export const count: Wording<CountDistribution> = (text) => {
  const phrase = new Phrase(text, 'a whole number, a range, "geometric mean 3" or a list', '1 to 12');
  if (phrase.take('geometric')) {
    phrase.need('mean');
    const mean = phrase.number();
    if (mean < 1) throw phrase.error('The mean of numbers from 1 up cannot be below 1.');
    phrase.end();
    return mean === 1 ? { kind: 'fixed', value: 1 } : { kind: 'geometric', mean };
  }
  const low = wholeFrom1(phrase);
  if (!phrase.take('to')) {
    phrase.end();
    return { kind: 'fixed', value: low };
  }
  const high = wholeFrom1(phrase);
  if (low > high)
    throw phrase.error(`The low end (${low}) is above the high end (${high}).`, `${high} to ${low}`);
  if (phrase.next === 'usually') {
    throw phrase.error(
      'Counts have no usual value: each number of the range is equally likely.',
      `${low} to ${high}`,
    );
  }
  phrase.end();
  return low === high ? { kind: 'fixed', value: low } : { kind: 'uniform', low, high };
};

/** Largest count that a distribution can give; Infinity for a geometric one. */
export function largestCount(distribution: CountDistribution): number {
  switch (distribution.kind) {
    case 'fixed':
      return distribution.value;
    case 'uniform':
      return distribution.high;
    case 'list':
      return distribution.values.reduce((largest, value) => Math.max(largest, value), 1);
    case 'geometric':
      return Number.POSITIVE_INFINITY;
  }
}

/** Mean of a distribution of counts. */
export function meanCount(distribution: CountDistribution): number {
  switch (distribution.kind) {
    case 'fixed':
      return distribution.value;
    case 'uniform':
      return (distribution.low + distribution.high) / 2;
    case 'list':
      return distribution.values.reduce((sum, value) => sum + value, 0) / distribution.values.length;
    case 'geometric':
      return distribution.mean;
  }
}

/** A share in per cent, as a part of one. @param most largest share allowed, per cent @throws WordingError */
export function share(most: number, below = false): Wording<number> {
  const expected = `a share from 0 to ${below ? 'below ' : ''}${most} %`;
  return (text) => {
    const phrase = new Phrase(text, expected, '15 %');
    const amount = phrase.amount('share');
    phrase.end();
    if (amount.unit === null) {
      const percent = amount.number <= 1 ? Number((amount.number * 100).toPrecision(6)) : amount.number;
      throw phrase.error(`"${text}" has no % behind it.`, `${percent} %`);
    }
    const value = toBase(amount.number, amount.unit);
    if (value > most / 100 || (below && value >= most / 100)) {
      throw phrase.error(`${amount.text} is more than there can be.`, `${below ? most - 1 : most} %`);
    }
    return value;
  };
}

/** A share above zero, at most all. @throws WordingError */
export const someShare: Wording<number> = (text) => {
  const value = share(100)(text);
  if (value > 0) return value;
  throw new WordingError('It cannot be zero.', 'a share above 0, to 100 %', '10 %');
};

/** `14 per week`, `2.5 per hour`: how often, per week. @throws WordingError */
export const perWeek: Wording<number> = (text) => {
  const phrase = new Phrase(text, 'a number per hour, day, week or month', '14 per week');
  const number = phrase.number();
  if (phrase.atEnd) throw phrase.error(`"${text}" does not say how often.`, `${text} per week`);
  phrase.need('per');
  const weeks = { hour: 1 / 168, day: 1 / 7, week: 1, month: 365.25 / 84, year: 365.25 / 7 };
  const unit = phrase.next;
  if (!(unit in weeks) || !phrase.take(unit)) {
    throw phrase.error(`"per ${unit}" is not possible here.`, `${number} per week`);
  }
  phrase.end();
  if (number <= 0) throw phrase.error('Nothing arrives at this rate; leave the demand out instead.');
  return number / weeks[unit as keyof typeof weeks];
};

/** `2 % per month`, `-10 % per year`, as compound growth per month. @throws WordingError */
export const growthPerMonth: Wording<number> = (text) => {
  const negative = /^\s*[-−]/.test(text);
  const phrase = new Phrase(text.replace(/^\s*[-−+]/, ''), 'a share per month or per year', '2 % per month');
  const amount = phrase.amount('share');
  if (amount.unit === null)
    throw phrase.error(`"${text}" has no % behind the number.`, `${amount.text} % per month`);
  if (phrase.atEnd) throw phrase.error(`"${text}" does not say per what.`, `${text} per month`);
  phrase.need('per');
  const yearly = phrase.take('year');
  if (!yearly && !phrase.take('month')) throw phrase.error(`"per ${phrase.next}" is not possible here.`);
  phrase.end();
  const growth = toBase(amount.number, amount.unit) * (negative ? -1 : 1);
  if (growth <= -1) throw phrase.error('Demand cannot shrink by all there is.');
  return yearly ? (1 + growth) ** (1 / 12) - 1 : growth;
};

function wholeFrom1(phrase: Phrase): number {
  const value = phrase.number();
  if (Number.isSafeInteger(value) && value >= 1) return value;
  throw phrase.error(
    `${value} is not a whole number from 1 up.`,
    value < 1 ? phrase.example : String(Math.round(value)),
  );
}
