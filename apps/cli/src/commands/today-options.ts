import { type Command, Option } from 'commander';
import type { TodayOptions } from '../records/lab-today.ts';

/** What a command has that starts from the state in which the lab stands. */
export type TodayCommandOptions = TodayOptions;

/** Adds the options to say where the state of the lab is told. */
export function withTodayOptions(command: Command): Command {
  return command
    .addOption(
      new Option(
        '--log <file>',
        'start from today, by the open rows of the lab\'s own log (CSV), as "from-log" reads it',
      ),
    )
    .option('--machines <file>', 'records of machines (CSV) beside the log: what runs now')
    .option('--mapping <file>', 'what the columns and parts of the log are (YAML), where the guess is wrong')
    .option('--now <moment>', 'up to when the log is read, as "2027-05-12 09:30" (default: its last row)')
    .option(
      '--backlog <file>',
      'or what stands in the lab, in a file of its own (YAML), as under "at the start"',
    );
}
