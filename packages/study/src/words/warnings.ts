import type { Target } from '@buildweek/model';
import { type HandLoad, type LawCheck, periodName } from '@buildweek/results';
import { percent } from './figures.ts';

/** A warning for every resource that is asked for all its hours or more. */
export function loadWarnings(loads: readonly HandLoad[]): string[] {
  return loads
    .filter((load) => load.load >= 1)
    .map(
      (load) =>
        `The load of ${load.name} is ${percent(load.load)} %: ${hours(load.demandHoursPerWeek)} h a week are asked for, ${hours(load.availableHoursPerWeek)} h are there. Its queue grows without end.`,
    );
}

/** What has to be said about jobs that were never finished. */
export function unfinishedWarnings(jobs: number, unfinished: number, capWeeks: number): string[] {
  if (unfinished === 0) return [];
  return [
    `${unfinished} of ${jobs} jobs were not finished ${capWeeks === 1 ? '1 week' : `${capWeeks} weeks`} after the measured ones. They count as later than everything; give the lab more weeks to finish, or less to do.`,
  ];
}

/** Targets that speak of quarters where what is measured is none: the scenario says otherwise than the command. */
export function quarterWarnings(targets: readonly Target[], weeks: number): string[] {
  const period = periodName(weeks);
  if (period === 'quarter') return [];
  return targets
    .filter(({ wording }) => /\bquarters?$/i.test(wording))
    .map(({ wording }) => `“${wording}” speaks of quarters; here it is judged by the ${period}.`);
}

/** A law that does not hold is an error of the program, and nothing it says should be trusted. */
export function lawWarnings(checks: readonly LawCheck[]): string[] {
  return checks
    .filter((check) => !check.holds)
    .map(
      (check) =>
        `The check "${check.law}" fails: this is an error of the program. Do not rely on these results.`,
    );
}

function hours(value: number): string {
  return value.toFixed(value < 10 ? 1 : 0);
}
