import { plainDuration } from './duration.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** A promise as it is worded; the cut-off stands elsewhere. */
export type PromiseWording =
  | { readonly kind: 'none' }
  | { readonly kind: 'clock'; readonly hours: number }
  | { readonly kind: 'working days'; readonly days: number };

const EXPECTED = 'working days ("3 working days"), a time by the clock ("48 h") or none';

/** `3 working days`, `48 h`, `none`. @throws WordingError */
export const promise: Wording<PromiseWording> = (text) => {
  if (/^none$/i.test(text)) return { kind: 'none' };
  const working = /^(.+?)\s+working\s+days?$/i.exec(text);
  if (working !== null) {
    const days = Number(working[1]);
    if (Number.isInteger(days) && days >= 0) return { kind: 'working days', days };
    const last = working[1]?.match(/\d+(?:\.\d+)?/g)?.at(-1);
    throw new WordingError(
      `"${working[1]}" is not a whole number of days.`,
      EXPECTED,
      last === undefined ? '3 working days' : `${Math.ceil(Number(last))} working days`,
    );
  }
  if (/^\d+$/.test(text)) {
    throw new WordingError(`"${text}" does not say of what.`, EXPECTED, `${text} working days`);
  }
  const { distribution } = plainDuration(text);
  if (distribution.kind === 'constant' && distribution.value > 0) {
    return { kind: 'clock', hours: distribution.value };
  }
  throw new WordingError('A promise is one time above zero.', EXPECTED, '3 working days');
};
