import { growthPerMonth } from './words/numbers.ts';
import { WordingError } from './words/wording-error.ts';

/** A growth that cannot be read; says what to write instead. */
export class AskedGrowthError extends Error {
  readonly write: string;

  constructor(message: string, write: string) {
    super(message);
    this.name = 'AskedGrowthError';
    this.write = write;
  }
}

/**
 * `4 % a month`, `-10 % per year`: compound growth per month as a share.
 *
 * @throws AskedGrowthError
 */
export function askedGrowth(text: string): number {
  try {
    return growthPerMonth(text.replace(/\b(?:an?|each|every)\s+(?=month|year)/i, 'per '));
  } catch (error) {
    if (!(error instanceof WordingError)) throw error;
    throw new AskedGrowthError(error.message, error.write);
  }
}
