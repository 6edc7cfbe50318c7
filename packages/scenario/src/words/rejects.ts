import { plainDuration } from './duration.ts';
import { Phrase } from './phrase.ts';
import { toBase } from './units.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

/** Rejects as they are worded. */
export interface RejectWording {
  /** Chance per piece; `usual`: what the class of the machine says. */
  readonly share: number | 'usual';
  /** Name of the stage where replacements start; null: not said. */
  readonly backTo: string | null;
}

const EXPECTED = 'a share of the parts (or "usual"), and the stage where replacements start';
const EXAMPLE = '4 % back to build';

/** `4 % back to build`, `4 %`, `usual back to build`, `none`. @throws WordingError */
export const rejectWording: Wording<RejectWording | null> = (text) => {
  if (/^none$/i.test(text)) return null;
  const [first = '', ...rest] = text.split(/\s*,?\s+back\s+to\s+/i);
  const backTo = rest.length === 0 ? null : rest.join(' back to ');
  if (/^usual$/i.test(first)) return { share: 'usual', backTo };
  const phrase = new Phrase(first, EXPECTED, EXAMPLE);
  const amount = phrase.amount('share');
  if (amount.unit === null) {
    throw phrase.error(`"${amount.text}" is a share and needs a %.`, text.replace(first, `${first} %`));
  }
  if (phrase.take('of')) phrase.need('parts');
  phrase.end();
  const share = toBase(amount.number, amount.unit);
  if (share >= 1) {
    throw phrase.error('No part would ever pass.', text.replace(amount.text, '50 %'));
  }
  return share === 0 ? null : { share, backTo };
};

/** The longest that parts should wait as it is worded: hours, and the stage they come from when it is named. */
export interface MaximumWaitWording {
  readonly hours: number;
  readonly after: string | null;
}

/** `2 h after wash`, `2 h`. @throws WordingError */
export const maximumWait: Wording<MaximumWaitWording> = (text) => {
  const [time = '', ...rest] = text.split(/\s+after\s+/i);
  const { distribution } = readPart(text, time, plainDuration);
  if (distribution.kind === 'constant' && distribution.value > 0) {
    return { hours: distribution.value, after: rest.length === 0 ? null : rest.join(' after ') };
  }
  throw new WordingError(
    `"${time}" is not one time above zero.`,
    'the longest wait, and the stage it counts from',
    '2 h after wash',
  );
};
