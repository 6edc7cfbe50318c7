import type { PrecisionAsked, StudySettings } from '@buildweek/model';
import { badInput } from '../failure.ts';
import { checkReplications } from '../plans/plan-options.ts';
import type { ChangesOptions } from './changes-option.ts';
import type { TodayCommandOptions } from './today-options.ts';

/** The options of the command `run`. */
export interface RunOptions extends ChangesOptions, TodayCommandOptions {
  readonly json?: string;
  readonly replications?: number;
  readonly precision?: PrecisionAsked;
  readonly atMost?: number;
  readonly weeks?: number;
  readonly ignoredWeeks?: number | 'auto';
  readonly seed?: string;
  readonly queueWaits: boolean;
  readonly workers?: number;
  readonly force: boolean;
}

/**
 * What the scenario says, with what the options say instead.
 * @throws Failure for bad input when the two do not go together
 */
export function settingsFrom(scenario: StudySettings, options: RunOptions): StudySettings {
  const precision = options.precision ?? (options.replications === undefined ? scenario.precision : null);
  const replications = precision === null ? (options.replications ?? scenario.replications) : null;
  if (precision === null && options.atMost !== undefined) {
    throw badInput(
      '--at-most limits the search for a precision, and none is asked for. Add --precision "5 %".',
    );
  }
  if (replications !== null) checkReplications(replications);
  return {
    ...scenario,
    seed: options.seed ?? scenario.seed,
    weeks: options.weeks ?? scenario.weeks,
    ignoredWeeks: options.ignoredWeeks ?? scenario.ignoredWeeks,
    replicationLimit: options.atMost ?? scenario.replicationLimit,
    replications,
    precision,
  };
}
