import type { CivilTime } from '@buildweek/records';
import type { HeldStage } from '@buildweek/results';
import { mean, variance } from '@buildweek/statistics';
import { MILLISECONDS_PER_HOUR } from './log-times.ts';
import type { KnownStage } from './logged-stages.ts';
import type { StageMoments } from './stage-moments.ts';

/** A stretch of a route between two moments that the log knows. */
interface Stretch {
  readonly stage: string;
  readonly logged: string;
  readonly what: HeldStage['what'];
}

/** A stretch held against the model, and how far apart they are. */
export type StretchTimes = Omit<HeldStage, 'standsOut'> & {
  /** What happened less the average of the replications, in standard deviations of another replication. */
  readonly distance: number;
};

/** Of one job: when it was asked for, its stages, and its end; null where that is not known. */
export interface JobMoments {
  readonly part: string;
  readonly asked: CivilTime;
  readonly stages: readonly StageMoments[];
  readonly end: CivilTime | null;
}

/** Jobs that a stretch needs to be spoken of. */
const FEWEST_JOBS = 5;

/**
 * Average hours of the stretches of one part type, in the log and in the replications.
 *
 * @param lastStage of its route, behind the last of which the log knows times
 * @param logged jobs of the part in the log
 * @param traced the same jobs in each replication, in the same order
 */
export function stageTimes(
  part: string,
  stages: readonly KnownStage[],
  lastStage: string,
  logged: readonly JobMoments[],
  traced: readonly (readonly JobMoments[])[],
): StretchTimes[] {
  const stretches = stretchesOf(stages, lastStage);
  const ofLog = logged.map((job) => hoursOf(job, stages));
  return stretches.flatMap((stretch, index): StretchTimes[] => {
    const known = [...ofLog.keys()].filter((job) => ofLog[job]?.[index] != null);
    if (known.length < FEWEST_JOBS) return [];
    const observed = averageOf(known.map((job) => ofLog[job]?.[index] ?? null));
    const averages = traced.flatMap((jobs) => {
      const hours = known.map((job) => {
        const one = jobs[job];
        return one === undefined ? null : (hoursOf(one, stages)[index] ?? null);
      });
      return averageOf(hours) ?? [];
    });
    if (observed === null || averages.length < 2) return [];
    const expected = mean(averages);
    return [
      {
        part,
        ...stretch,
        jobs: known.length,
        observed,
        expected,
        usualLow: Math.min(...averages),
        usualHigh: Math.max(...averages),
        distance: distanceOf(observed - expected, variance(averages) * (1 + 1 / averages.length)),
      },
    ];
  });
}

function stretchesOf(stages: readonly KnownStage[], lastStage: string): Stretch[] {
  const own = stages.flatMap(({ stage, logged, hasStart, hasEnd, isWork }): Stretch[] => {
    if (hasStart && hasEnd) {
      return [
        { stage, logged, what: 'waiting before' },
        { stage, logged, what: isWork ? 'work' : 'at the stage' },
      ];
    }
    return [{ stage, logged, what: hasStart ? 'waiting before' : 'up to its end' }];
  });
  return [...own, { stage: lastStage, logged: 'finished', what: 'up to its end' }];
}

/** Hours of each stretch, in the order of `stretchesOf`; null where a moment is not known. */
function hoursOf(
  { asked, stages: known, end }: JobMoments,
  stages: readonly KnownStage[],
): (number | null)[] {
  let before: CivilTime | null = asked;
  const hours: (number | null)[] = [];
  const upTo = (moment: CivilTime | null): void => {
    hours.push(before === null || moment === null ? null : (moment - before) / MILLISECONDS_PER_HOUR);
    before = moment;
  };
  stages.forEach(({ hasStart, hasEnd }, index) => {
    const { start = null, end: own = null } = known[index] ?? {};
    if (hasStart) upTo(start);
    if (hasEnd) upTo(own);
  });
  upTo(end);
  return hours;
}

/** Where nothing varies, any difference is infinitely far. */
function distanceOf(difference: number, spread: number): number {
  return difference === 0 ? 0 : difference / Math.sqrt(spread);
}

function averageOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}
