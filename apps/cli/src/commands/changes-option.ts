import type { Command } from 'commander';
import { gathered } from './option-values.ts';

/** What a command has that plays one scenario, as it is or changed. */
export interface ChangesOptions {
  readonly with: readonly string[];
}

/** Adds the option to play the scenario with changes in its own words. */
export function withChangesOption(command: Command): Command {
  return command.option(
    '--with <changes>',
    'the scenario with changes: places and values, as "technicians / count: 3"; several with a semicolon; may be given again',
    gathered,
    [] as readonly string[],
  );
}
