import { MOST_ALIKE } from './numbers.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** What may be chosen: a number within a range, or one of several wordings. */
export type RangeOfChoice =
  | { readonly kind: 'count'; readonly from: number; readonly to: number }
  | { readonly kind: 'wording'; readonly options: readonly string[] };

const EXPECTED = 'a range of whole numbers, or values with "or" between them';

/** `2 to 5`, or `day or evening`. @throws WordingError */
export const rangeOfChoice: Wording<RangeOfChoice> = (text) => {
  const range = /^(\d+)\s+to\s+(\d+)$/.exec(text.trim());
  if (range !== null) {
    const [from, to] = [Number(range[1]), Number(range[2])];
    if (from > to) {
      throw new WordingError(
        `The low end (${from}) is above the high end (${to}).`,
        EXPECTED,
        `${to} to ${from}`,
      );
    }
    if (to > MOST_ALIKE) {
      throw new WordingError(
        `${to} is more than this program is made for.`,
        EXPECTED,
        `${from} to ${MOST_ALIKE}`,
      );
    }
    return { kind: 'count', from, to };
  }
  const options = text.split(/\s+or\s+/).map((option) => option.trim());
  if (options.length < 2 || options.some((option) => option === '')) {
    throw new WordingError(`"${text}" leaves no choice.`, EXPECTED, '1 to 4');
  }
  const twice = options.find((option, index) => options.indexOf(option) < index);
  if (twice !== undefined) {
    throw new WordingError(`"${twice}" is there twice.`, EXPECTED, [...new Set(options)].join(' or '));
  }
  return { kind: 'wording', options };
};
