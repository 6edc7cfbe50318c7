import type { ReplayAnswer } from '@buildweek/results';
import type { Chart, ChartSize } from '../chart.ts';
import { replayLeadTimes } from './replay-lead-times.ts';
import { replayParts } from './replay-parts.ts';
import { replayPartWeeks, replayWeeks } from './replay-weeks.ts';

/** The charts of a model held against what happened. */
export function replayChartsOf(answer: ReplayAnswer, size: ChartSize = 'wide'): Chart[] {
  return [
    replayWeeks(answer, size),
    replayLeadTimes(answer, size),
    replayParts(answer, size),
    ...answer.parts.map(({ part }, position) => replayPartWeeks(answer, part, position, size)),
  ];
}
