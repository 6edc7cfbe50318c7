/** What the command ends with. */
export const EXIT = { done: 0, internalError: 1, badInput: 2, precisionNotReached: 3, stopped: 130 } as const;
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Ends the command with a message for the user and an exit code. */
export class Failure extends Error {
  readonly exitCode: ExitCode;

  constructor(exitCode: ExitCode, message: string) {
    super(message);
    this.exitCode = exitCode;
  }
}

/** Something that the user gave is wrong. The message says where, what, and how to mend it. */
export function badInput(message: string): Failure {
  return new Failure(EXIT.badInput, message);
}
