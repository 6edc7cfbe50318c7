import { Phrase } from './phrase.ts';
import { toBase, unitNamed } from './units.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** The currency of a scenario, and where it is stated, so that an amount in another one can name both places. */
export interface Currency {
  /** Empty when what is stated is wrong, which has been reported: any is then taken. */
  readonly code: string;
  readonly line: number;
}

const CODE = /^[A-Z]{3}$/;
const SIGNS: Readonly<Record<string, string>> = { '€': 'EUR', $: 'USD', '£': 'GBP', '¥': 'JPY' };

/** Three capital letters, as in ISO 4217. @throws WordingError */
export const currencyCode: Wording<string> = (text) => {
  if (CODE.test(text)) return text;
  const known = SIGNS[text] ?? (/^[a-z]{3}$/i.test(text) ? text.toUpperCase() : 'EUR');
  throw new WordingError(
    `"${text}" is not the code of a currency.`,
    'three capital letters, as EUR, GBP, USD or CHF',
    known,
  );
};

interface AmountWords {
  readonly currency: Currency;
  readonly expected: string;
  readonly example: string;
  /** What it may count for, as `hour`; then "per hour" may stand behind it. */
  readonly per?: readonly string[];
  /** Whether zero has a meaning; default: yes. */
  readonly orZero?: boolean;
}

/** `3200`, `3200 EUR`, `41 per hour`: an amount of money, not negative. @returns a reader */
export function amount({
  currency,
  expected,
  example,
  per = [],
  orZero = true,
}: AmountWords): Wording<number> {
  return (text) => {
    const phrase = new Phrase(withSlash(text), expected, example);
    const value = moneyOf(phrase, currency);
    if (!phrase.atEnd && per.length > 0) {
      phrase.need('per');
      if (!phrase.take(...per)) {
        throw phrase.error(`"per ${phrase.next}" is not possible here.`, `${value} per ${per[0]}`);
      }
    }
    phrase.end();
    if (value > 0 || orZero) return value;
    throw phrase.error('It cannot be zero.');
  };
}

/** `12000 per year`, `1000 per month`: money in a year. @returns a reader */
export function perYear(currency: Currency, example: string): Wording<number> {
  return (text) => {
    const phrase = new Phrase(withSlash(text), 'an amount per year or per month', example);
    const value = moneyOf(phrase, currency);
    if (phrase.atEnd) throw phrase.error(`"${text}" does not say in which time.`, `${text} per year`);
    phrase.need('per');
    const months = phrase.take('month');
    if (!months && !phrase.take('year')) {
      throw phrase.error(`"per ${phrase.next}" is not possible here.`, `${value} per year`);
    }
    phrase.end();
    return months ? 12 * value : value;
  };
}

/** What a machine costs to run: `8 % of the price` or an amount per year. @returns a reader of the amount for a price */
export function yearlyCost(currency: Currency): Wording<(price: number) => number> {
  return (text) => {
    const example = '8 % of the price';
    if (!text.includes('%')) {
      const phrase = new Phrase(withSlash(text), 'a share of the price, or an amount per year', example);
      const value = moneyOf(phrase, currency);
      if (!phrase.atEnd) {
        phrase.need('per');
        phrase.need('year');
      }
      phrase.end();
      return () => value;
    }
    const phrase = new Phrase(text, 'a share of the price, or an amount per year', example);
    const said = phrase.amount('share');
    if (!phrase.atEnd) {
      phrase.need('of');
      phrase.need('the');
      phrase.need('price');
    }
    phrase.end();
    const share = said.unit === null ? 0 : toBase(said.number, said.unit);
    if (share > 1) throw phrase.error(`${said.text} of the price every year is more than a new one.`);
    return (price) => share * price;
  };
}

/** Price of a material by weight, or by volume where its density is known. */
export type MaterialPrice = { readonly perKilogram: number } | { readonly perCubicCentimetre: number };

/** `28 per kg`, `90 per litre`. @returns a reader */
export function materialPrice(currency: Currency): Wording<MaterialPrice> {
  return (text) => {
    const phrase = new Phrase(withSlash(text), 'an amount per kg, per g or per litre', '28 per kg');
    const value = moneyOf(phrase, currency);
    if (phrase.atEnd) throw phrase.error(`"${text}" does not say of how much.`, `${text} per kg`);
    phrase.need('per');
    if (phrase.take('kg')) return ended(phrase, { perKilogram: value });
    if (phrase.take('g')) return ended(phrase, { perKilogram: 1000 * value });
    const unit = unitNamed(phrase.next);
    if (unit?.kind !== 'volume') {
      throw phrase.error(`"per ${phrase.next}" is not possible here.`, `${value} per kg`);
    }
    phrase.take(phrase.next.toLowerCase());
    return ended(phrase, { perCubicCentimetre: value / (toBase(1, unit) / 1000) });
  };
}

/** `5 years`, `18 months`: how long something lasts, in years, above zero. @returns a reader */
export function yearsOf(most: number, example: string): Wording<number> {
  return (text) => {
    const phrase = new Phrase(text, `a time above zero, at most ${most} years`, example);
    const said = phrase.amount('time');
    phrase.end();
    if (said.unit === null) throw phrase.error(`"${text}" has no unit.`, `${said.text} years`);
    const years = toBase(said.number, said.unit) / HOURS_PER_YEAR;
    if (!(years > 0)) throw phrase.error('It cannot be zero.');
    if (years > most) throw phrase.error(`${said.text} is more than this program is made for.`);
    return years;
  };
}

/** `5 years`: a whole number of years. @returns a reader */
export function wholeYears(most: number, example: string): Wording<number> {
  return (text) => {
    const years = Number(yearsOf(most, example)(text).toPrecision(9));
    if (Number.isInteger(years)) return years;
    throw new WordingError(
      `${text} is no whole number of years.`,
      `whole years, at most ${most}`,
      `${Math.max(1, Math.round(years))} years`,
    );
  };
}

/** `6 weeks`: one time without luck, in weeks; zero means at once. @returns a reader */
export function weeksOf(example: string): Wording<number> {
  return (text) => {
    const phrase = new Phrase(text, 'a time, at most 5 years', example);
    const said = phrase.amount('time');
    phrase.end();
    if (said.unit === null) throw phrase.error(`"${text}" has no unit.`, `${said.text} weeks`);
    const hours = toBase(said.number, said.unit);
    if (hours > 5 * HOURS_PER_YEAR) throw phrase.error(`${said.text} is more than this program is made for.`);
    return hours / 168;
  };
}

/** `8 %`, `8 % per year`: interest of a year, as a part of one. @throws WordingError */
export const interestRate: Wording<number> = (text) => {
  const phrase = new Phrase(text, `interest from 0 to ${100 * HIGHEST_INTEREST} % a year`, '8 %');
  const said = phrase.amount('share');
  if (said.unit === null) {
    const percent = said.number < 1 ? Number((100 * said.number).toPrecision(6)) : said.number;
    throw phrase.error(`"${text}" has no % behind it.`, `${percent} %`);
  }
  if (!phrase.atEnd) {
    phrase.need('per');
    phrase.need('year');
  }
  phrase.end();
  const rate = toBase(said.number, said.unit);
  if (rate <= HIGHEST_INTEREST) return rate;
  throw phrase.error(`${said.text} of interest in a year is more than this program is made for.`);
};

const MOST_MONEY = 1e12;
const HIGHEST_INTEREST = 0.5;
const HOURS_PER_YEAR = 365.25 * 24;

/** An amount with the currency in front of it, behind it, or left out. */
function moneyOf(phrase: Phrase, currency: Currency): number {
  const before = currencyNext(phrase, currency);
  const value = phrase.number();
  if (!before) currencyNext(phrase, currency);
  if (value > MOST_MONEY) throw phrase.error('This is more money than this program is made for.');
  return value;
}

function currencyNext(phrase: Phrase, currency: Currency): boolean {
  const word = phrase.next;
  const code = SIGNS[word] ?? word;
  if (!CODE.test(code)) return false;
  if (currency.code !== '' && code !== currency.code) {
    throw new WordingError(
      `This is in ${code}, and line ${currency.line} says that money is in ${currency.code}.`,
      `an amount converted to ${currency.code}`,
      phrase.text.replace(word, currency.code),
    );
  }
  phrase.take(word.toLowerCase());
  return true;
}

/** `28/kg` is said as `28 per kg`. */
function withSlash(text: string): string {
  return text.replace(/\s*\/\s*/g, ' per ');
}

function ended<T>(phrase: Phrase, value: T): T {
  phrase.end();
  return value;
}
