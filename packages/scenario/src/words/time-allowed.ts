import { plainDuration } from './duration.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** How much time a job may take as it is worded; the cut-off stands elsewhere. */
export type TimeAllowedWording =
  | { readonly kind: 'clock'; readonly hours: number }
  | { readonly kind: 'working days'; readonly days: number };

const EXPECTED = 'a time by the clock ("48 h", "2 days") or working days ("3 working days")';

/** `2 days`, `48 h`, `5 working days`. @throws WordingError */
export const timeAllowed: Wording<TimeAllowedWording> = (text) => {
  const working = /^(.+?)\s+working\s+days?$/i.exec(text);
  if (working !== null) {
    const days = Number(working[1]);
    if (Number.isInteger(days) && days >= 0) return { kind: 'working days', days };
    const last = working[1]?.match(/\d+(?:\.\d+)?/g)?.at(-1);
    const write = last === undefined ? '3 working days' : `${Math.ceil(Number(last))} working days`;
    throw new WordingError(`"${working[1]}" is not a whole number of days.`, EXPECTED, write);
  }
  if (/^\d+$/.test(text)) {
    throw new WordingError(`"${text}" does not say of what.`, EXPECTED, `${text} days`);
  }
  const { distribution } = plainDuration(text);
  if (distribution.kind === 'constant' && distribution.value > 0) {
    return { kind: 'clock', hours: distribution.value };
  }
  throw new WordingError('The time that a job may take is one time above zero.', EXPECTED, '2 days');
};
