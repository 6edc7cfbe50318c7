import { listed, nearest } from '../nearest.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** One of a few words. @throws WordingError */
export function choice<T extends string>(...words: readonly T[]): Wording<T> {
  return (text) => {
    const found = words.find((word) => word.toLowerCase() === text.toLowerCase());
    if (found !== undefined) return found;
    throw new WordingError(
      `"${text}" is not possible here.`,
      listed(words, 20),
      nearest(text, words) ?? words[0] ?? listed(words, 20),
    );
  };
}

/** `yes` or `no`. @throws WordingError */
export const yesNo: Wording<boolean> = (text) => {
  if (/^(yes|true)$/i.test(text)) return true;
  if (/^(no|false)$/i.test(text)) return false;
  throw new WordingError(
    `"${text}" is neither yes nor no.`,
    'yes or no',
    /^[yt1]/i.test(text) ? 'yes' : 'no',
  );
};

/** Any text that is not empty: a name, a skill, a material. @throws WordingError */
export const anyText: Wording<string> = (text) => {
  if (text !== '' && !/\p{Cc}/u.test(text)) return text;
  throw new WordingError('A name is missing here.', 'a word or a few words on one line', 'a name');
};
