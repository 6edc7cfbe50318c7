/** What is wrong with a table, so that nothing can be made of it. */
export class TableProblem extends Error {
  /** Line of the table; null when it is about all of it, or about the mapping. */
  readonly row: number | null;
  readonly found: string;
  readonly expected: string;
  /** What to write instead. */
  readonly write: string;

  constructor(
    message: string,
    said: {
      readonly row: number | null;
      readonly found: string;
      readonly expected: string;
      readonly write: string;
    },
  ) {
    super(message);
    this.row = said.row;
    this.found = said.found;
    this.expected = said.expected;
    this.write = said.write;
  }
}
