import { someShare } from './numbers.ts';
import { readPart, WordingError } from './wording-error.ts';

/** In which share of periods a target has to be met. */
export interface PeriodsWording {
  /** Above 0, below 1. */
  readonly chance: number;
  /** Whether it speaks of quarters, which are 13 weeks. */
  readonly quarters: boolean;
}

const ENDING = /^(.+?),?\s+in\s+(\d\S*(?:\s*%)?)\s+of\s+(?:all\s+|the\s+)?(\p{L}+)$/iu;

/**
 * Takes the ending `in 90 % of quarters` off a target.
 *
 * @returns the target without it, and what it says; null where there is no such ending
 * @throws WordingError
 */
export function periodsOf(text: string): { sentence: string; periods: PeriodsWording | null } {
  const parts = ENDING.exec(text);
  if (parts === null) return { sentence: text, periods: null };
  const [, sentence = '', share = '', word = ''] = parts;
  if (!/^(?:quarters?|periods?)$/i.test(word)) {
    throw new WordingError(
      `A share of ${word} has no meaning here.`,
      'quarters, or periods of as many weeks as the run measures',
      text.replace(/\p{L}+$/u, 'periods'),
    );
  }
  const chance = readPart(text, share, someShare);
  if (chance >= 1) {
    throw new WordingError(
      'That every period without exception meets it can never be found out by playing some.',
      'a share of periods below 100 %',
      text.replace(share, '95 %'),
    );
  }
  return { sentence, periods: { chance, quarters: /^quarters?$/i.test(word) } };
}
