import type { StudySettings } from '@buildweek/model';
import { type Command, Option } from 'commander';
import { ignoredWeeksOption, wholeNumberOption } from '../commands/option-values.ts';

/** The options of all commands that play several plans. */
export interface PlanOptions {
  readonly json?: string;
  readonly page?: string;
  readonly weeks?: number;
  readonly ignoredWeeks?: number | 'auto';
  readonly seed?: string;
  readonly workers?: number;
  readonly resume: boolean;
  readonly force: boolean;
}

/** Adds them to a command. */
export function withPlanOptions(command: Command): Command {
  return command
    .option('--json <file>', 'write the answer as JSON; - for standard output')
    .option('--page <file>', 'write the answer as one HTML page')
    .option('--weeks <number>', 'measure so many weeks', wholeNumberOption(1))
    .option(
      '--ignored-weeks <number>',
      'leave out so many weeks before them; auto chooses from a pilot',
      ignoredWeeksOption,
    )
    .option('--seed <text>', 'random numbers to play with; the same seed gives the same answer')
    .option(
      '--workers <number>',
      'threads to play on; the answer does not depend on it (default: one for each core)',
      wholeNumberOption(1),
    )
    .addOption(
      new Option('--resume', 'go on with work that was stopped; give what was given then').default(false),
    )
    .option('--force', 'overwrite files that this command did not write', false);
}

/** What the scenario says, with what the options say instead. */
export function planSettings(scenario: StudySettings, options: PlanOptions): StudySettings {
  return {
    ...scenario,
    seed: options.seed ?? scenario.seed,
    weeks: options.weeks ?? scenario.weeks,
    ignoredWeeks: options.ignoredWeeks ?? scenario.ignoredWeeks,
  };
}
