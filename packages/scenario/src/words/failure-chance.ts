import type { BuildFailure } from '@buildweek/model';
import { Phrase } from './phrase.ts';
import { toBase } from './units.ts';
import type { Wording } from './wording-error.ts';

export type FailureChance = Pick<BuildFailure, 'chancePerBuild' | 'perPrintHour'>;

const EXPECTED = 'a share of builds, a share per print hour, both with "plus" between them, or never';
const EXAMPLE = '5 % of builds';

/**
 * `5 % of builds`, `0.2 % per print hour` (a rate of 0.002 failures in an hour of print), both with `plus`
 * between them, `never`. @throws WordingError
 */
export const failureChance: Wording<FailureChance> = (text) => {
  if (/^never$/i.test(text)) return { chancePerBuild: 0, perPrintHour: 0 };
  const phrase = new Phrase(text, EXPECTED, EXAMPLE);
  let chancePerBuild: number | null = null;
  let perPrintHour: number | null = null;
  do {
    const amount = phrase.amount('share');
    if (amount.unit === null) throw phrase.error(`"${amount.text}" is a share and needs a %.`);
    const share = toBase(amount.number, amount.unit);
    if (phrase.atEnd) throw phrase.error(`"${text}" does not say of what.`, `${text} of builds`);
    if (phrase.take('of')) {
      phrase.need('builds');
      if (chancePerBuild !== null) throw phrase.error('A share of builds is there twice.');
      if (share >= 1) throw phrase.error('No build would ever come out.', '50 % of builds');
      chancePerBuild = share;
    } else {
      phrase.need('per');
      phrase.need('print');
      phrase.need('hour');
      if (perPrintHour !== null) throw phrase.error('A share per print hour is there twice.');
      perPrintHour = share;
    }
  } while (phrase.take('plus'));
  phrase.end();
  return { chancePerBuild: chancePerBuild ?? 0, perPrintHour: perPrintHour ?? 0 };
};
