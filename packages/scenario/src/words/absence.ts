import type { CountDistribution } from '@buildweek/model';
import { count } from './numbers.ts';
import { Phrase } from './phrase.ts';
import { toBase } from './units.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** Absence by chance as it is worded. */
export interface AbsenceWording {
  /** Share of the days of work that a person is not there, 0 to below 1. */
  readonly share: number;
  /** Length of a spell in days of the calendar, the first included. */
  readonly days: CountDistribution;
}

const EXPECTED = 'a share of days, and how many at a time unless it is single days; or never';
const EXAMPLE = '3 % of days, 1 to 5 days at a time';

/** `never`, `3 % of days`, `3 % of days, 1 to 5 days at a time`. @throws WordingError */
export const absence: Wording<AbsenceWording | null> = (text) => {
  if (/^never$/i.test(text)) return null;
  const spell = /^(.*?)[\s,]+(\S+|\d+ to \d+|geometric mean \S+)\s+days?\s+at\s+a\s+time$/i.exec(text);
  const phrase = new Phrase(spell?.[1] ?? text, EXPECTED, EXAMPLE);
  const amount = phrase.amount('share');
  if (amount.unit === null) throw phrase.error(`"${amount.text}" is a share and needs a %.`);
  if (phrase.atEnd) throw phrase.error(`"${text}" does not say of what.`, `${text} of days`);
  phrase.need('of');
  phrase.need('days');
  phrase.end();
  const share = toBase(amount.number, amount.unit);
  if (share >= 1) throw phrase.error('Who is never there is not one of them.', '50 % of days');
  return share === 0 ? null : { share, days: spellOf(spell?.[2] ?? '1') };
};

function spellOf(text: string): CountDistribution {
  try {
    return count(text);
  } catch (error) {
    if (!(error instanceof WordingError)) throw error;
    throw new WordingError(error.message, EXPECTED, EXAMPLE);
  }
}
