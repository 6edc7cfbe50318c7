import { CommanderError } from 'commander';
import { EXIT, Failure } from './failure.ts';
import { createProgram } from './program.ts';

// Whoever reads our output may have seen enough, as `head` does.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(EXIT.done);
});

const program = createProgram();
try {
  if (process.argv.length <= 2) program.outputHelp();
  else await program.parseAsync();
} catch (error) {
  process.exitCode = exitCodeFor(error);
}

/** Tells the user what went wrong, unless that has been done. */
function exitCodeFor(error: unknown): number {
  // commander has printed its own message; help and version end with 0.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.badInput;
  if (error instanceof Failure) {
    process.stderr.write(`${error.message}\n`);
    return error.exitCode;
  }
  const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(
    `This is an error of the program, not of your files. Please report it with these lines:\n${detail}\n`,
  );
  return EXIT.internalError;
}
