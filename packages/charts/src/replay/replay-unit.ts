import type { ReplayAnswer } from '@buildweek/results';
import { DAYS, HOURS, HOURS_PER_DAY, type Unit } from '../format.ts';

/** The unit in which lead times are told: days by the clock, or hours where half of the jobs take less than a day. */
export function replayUnit({ leadTimes }: Pick<ReplayAnswer, 'leadTimes'>): Unit {
  const median = leadTimes.find(({ share }) => share === 0.5);
  return median === undefined || median.expected >= HOURS_PER_DAY ? DAYS : HOURS;
}
