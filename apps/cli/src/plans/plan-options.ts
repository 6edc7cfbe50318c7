import type { StudySettings } from '@buildweek/model';
import { type Command, Option } from 'commander';
import { ignoredWeeksOption, wholeNumberOption } from '../commands/option-values.ts';
import { badInput } from '../failure.ts';

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

/** What a command has that plays each of its plans so often. */
export interface ReplicationsOptions {
  readonly replications?: number;
}

/** Replications of each plan where neither the command nor the scenario says it. */
const USUAL_REPLICATIONS = 100;
/** An interval needs so many. */
const FEWEST_REPLICATIONS = 20;

/** Adds the option to say how often each plan is played. @param each what is played so often, in words */
export function withReplicationsOption(command: Command, each: string): Command {
  return command.option(
    '--replications <number>',
    `play ${each} so often, at least ${FEWEST_REPLICATIONS} (default: what the scenario says, or ${USUAL_REPLICATIONS})`,
    wholeNumberOption(FEWEST_REPLICATIONS),
  );
}

/**
 * How often each plan is played.
 * @throws Failure for bad input when the scenario asks for fewer replications than an interval needs
 */
export function planReplications(
  { replications: stated }: StudySettings,
  { replications: asked }: ReplicationsOptions,
): number {
  const replications = asked ?? stated ?? USUAL_REPLICATIONS;
  checkReplications(replications);
  return replications;
}

/** @throws Failure for bad input when a scenario asks for fewer replications than an interval needs */
export function checkReplications(replications: number): void {
  if (replications >= FEWEST_REPLICATIONS) return;
  throw badInput(
    `The scenario asks for ${replications} replications; an interval needs at least ${FEWEST_REPLICATIONS}. Write "replications: ${FEWEST_REPLICATIONS}" or more, or add --replications ${FEWEST_REPLICATIONS}.`,
  );
}
