import type { AwayGroup } from '@buildweek/results';

/** Jobs in the lab may be so much more than with everybody there and still count as normal. */
const NORMAL_SHARE = 0.05;
/** At least so many jobs, so that small labs are not judged on fractions of a job. */
const NORMAL_JOBS = 0.5;

/** What counts as normal, in words. */
export const NORMAL_BAND = `at most ${NORMAL_SHARE * 100} % more jobs in the lab than with everybody there, or half a job where that is more`;

/** Upper end of the normal band. @param there jobs in the lab with everybody there */
export function mostNormal(there: number): number {
  return there + Math.max(NORMAL_JOBS, NORMAL_SHARE * there);
}

/** A difference of jobs in the lab in one week, away minus there. */
export interface ExtraJobs {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * How many weeks after the return jobs in the lab are back within the normal band: the first week whose average is.
 *
 * @param there jobs in the lab with everybody there, by week
 * @param extra by week
 * @param returnWeek position of the first week in which everybody is back
 */
export function recovery(
  there: readonly number[],
  extra: readonly ExtraJobs[],
  returnWeek: number,
): AwayGroup['recovery'] {
  const first = (of: (one: ExtraJobs) => number): number | null => {
    for (let week = returnWeek; week < extra.length; week++) {
      const one = extra[week];
      const usual = there[week];
      if (one === undefined || usual === undefined) continue;
      if (usual + of(one) <= mostNormal(usual) + ROUNDING) return week - returnWeek;
    }
    return null;
  };
  return {
    weeks: first(({ value }) => value),
    low: first(({ low }) => low),
    high: first(({ high }) => high),
  };
}

const ROUNDING = 1e-9;
