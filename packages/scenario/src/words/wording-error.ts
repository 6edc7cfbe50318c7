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
