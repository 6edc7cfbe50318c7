/** A text that does not say what is needed; says what would. */
export class WordingError extends Error {
  readonly expected: string;
  readonly write: string;

  /**
   * @param message what is wrong, one sentence
   * @param expected what the place takes
   * @param write what to write instead
   */
  constructor(message: string, expected: string, write: string) {
    super(message);
    this.name = 'WordingError';
    this.expected = expected;
    this.write = write;
  }
}

/** Turns the text of a value into what it means. @throws WordingError */
export type Wording<T> = (text: string) => T;

/**
 * Reads a part of a text; what is to be written instead is then the whole text with the part mended.
 *
 * @throws WordingError
 */
export function readPart<T>(text: string, part: string, wording: Wording<T>): T {
  try {
    return wording(part);
  } catch (error) {
    if (!(error instanceof WordingError)) throw error;
    throw new WordingError(
      error.message,
      error.expected,
      text.replace(part, () => error.write),
    );
  }
}
