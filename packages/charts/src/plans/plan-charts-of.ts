import type { PlanAnswer } from '@buildweek/results';
import type { Chart, ChartSize } from '../chart.ts';
import { costAgainstSpeed } from './cost-against-speed.ts';
import { targetOfPlans } from './target-of-plans.ts';

/** The charts of a search for a plan: what cost buys, and each target over the plans that are shown. */
export function planChartsOf(answer: PlanAnswer, size: ChartSize = 'wide'): Chart[] {
  const targets = answer.shown[0]?.targets ?? [];
  return [
    costAgainstSpeed(answer, size),
    ...targets.map((_, position) => targetOfPlans(answer, position, size)),
  ].flatMap((chart) => chart ?? []);
}
