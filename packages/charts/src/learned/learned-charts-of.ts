import type { LearnedAnswer } from '@buildweek/results';
import type { Chart, ChartSize } from '../chart.ts';
import { arrivalsByHour } from './arrivals-by-hour.ts';
import { failedBuilds } from './failed-builds.ts';
import { fittedDurations } from './fitted-durations.ts';
import { weeklyCounts } from './weekly-counts.ts';

/** The charts of what was learned from a log, as far as the log tells. */
export function learnedChartsOf(answer: LearnedAnswer, size: ChartSize = 'wide'): Chart[] {
  const { weeks, blocks, durations, failures, level } = answer;
  return [
    ...(weeks.counts.length > 0 ? [weeklyCounts(weeks, size)] : []),
    ...(blocks === null ? [] : [arrivalsByHour(blocks, level, size)]),
    ...(durations.some(({ families }) => families.length > 0) ? [fittedDurations(durations, size)] : []),
    ...(failures.length > 0 ? [failedBuilds(failures, level, size)] : []),
  ];
}
