import type { Duration, DurationBasis } from '@buildweek/model';
import { listed, nearest } from '../nearest.ts';
import { readDistribution } from './distribution.ts';
import { Phrase } from './phrase.ts';
import { typicalHours } from './typical.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** A duration and what it counts for; null when the text leaves that open. */
export interface BasedDuration {
  readonly duration: Duration;
  readonly basis: DurationBasis | null;
}

const EXPECTED = 'a time with its unit';
const EXAMPLE = '10 to 45 min, usually 20';

/** A time that counts for what the key says: `20 min`, `10 to 45 min, usually 20`. @throws WordingError */
export const plainDuration: Wording<Duration> = (text) => basedDuration([])(text).duration;

/** Hours between arrivals: a time whose mean is above zero. @throws WordingError */
export const gap: Wording<Duration> = (text) => {
  const duration = plainDuration(text);
  if (duration.typicalHours > 0) return duration;
  throw new WordingError('Arrivals without any time between them never end.', 'a time above zero', '2 h');
};

/**
 * A time that may say what it counts for: `5 min per part`.
 *
 * @param bases what it may count for
 * @returns a reader @throws WordingError
 */
export function basedDuration(bases: readonly DurationBasis[]): Wording<BasedDuration> {
  const expected = bases.length === 0 ? EXPECTED : `${EXPECTED}, perhaps per ${listed(bases)}`;
  return (text) => {
    const suffix = /[\s,]*\bper\s+([^\s,]+)/i.exec(text);
    const rest = suffix === null ? text : text.replace(suffix[0], '');
    const word = suffix?.[1]?.toLowerCase() ?? null;
    const basis = bases.find((candidate) => candidate === word) ?? null;
    if (word !== null && basis === null) throw wrongBasis(text, word, bases, expected);
    const distribution = withSuffix(suffix?.[0] ?? '', () => {
      const phrase = new Phrase(rest, expected, EXAMPLE);
      const found = readDistribution(phrase);
      phrase.end();
      return found;
    });
    return { duration: { distribution, typicalHours: typicalHours(distribution) }, basis };
  };
}

/** What is to be written instead says again what it counts for, before the first comma. */
function withSuffix<T>(suffix: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof WordingError) || suffix === '') throw error;
    const write = error.write.replace(/(?=,|$)/, ` ${suffix.replace(/^[\s,]+/, '')}`);
    throw new WordingError(error.message, error.expected, write);
  }
}

function wrongBasis(text: string, word: string, bases: readonly string[], expected: string): WordingError {
  const without = text.replace(/[\s,]*\bper\s+[^\s,]+/i, '');
  if (bases.length === 0) {
    return new WordingError(
      `"per ${word}" has no meaning here: the key says what it counts for.`,
      expected,
      without,
    );
  }
  const meant = word.startsWith('piece') ? 'part' : nearest(word, bases);
  const proposed = meant !== null && bases.includes(meant) ? meant : bases[0];
  return new WordingError(
    `A time "per ${word}" is not possible here.`,
    expected,
    text.replace(/\bper\s+[^\s,]+/i, `per ${proposed}`),
  );
}
