import { commandLine } from '../terminal/command-line.ts';

/** What to type to go on with a command that was stopped: what was typed, and `--resume`. */
export function resumeCommand(typed: readonly string[]): string {
  return commandLine([...typed.filter((word) => word !== '--resume'), '--resume']);
}
