import type { PartAnswer } from '@buildweek/results';
import type { Chart, ChartSize } from '../chart.ts';
import { firstChoice } from './first-choice.ts';
import { hoursPerPart, minutesPerPart } from './per-part-charts.ts';
import { stageTimeline } from './stage-timeline.ts';

/**
 * The charts of the answer for one part: which way is first, the way from design to finished part, hours per part and
 * minutes of people per part against the number of pieces. What there is nothing to show of is left out.
 *
 * @param answer what one part costs in hours on each process
 * @param size for what width they are laid out
 */
export function partChartsOf(answer: PartAnswer, size: ChartSize = 'wide'): Chart[] {
  const hasQuantities = answer.ways.some((way) => way.quantities.length > 0);
  const hasTimelines = answer.ways.some((way) => way.timelines.length > 0);
  return [
    ...(hasQuantities ? [firstChoice(answer, size)] : []),
    ...(hasTimelines ? [stageTimeline(answer, size)] : []),
    ...(hasQuantities ? [hoursPerPart(answer, size), minutesPerPart(answer, size)] : []),
  ];
}
