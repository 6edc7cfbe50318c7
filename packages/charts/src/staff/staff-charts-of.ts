import type { StaffAnswer, StaffPlan } from '@buildweek/results';
import type { Chart, ChartSize } from '../chart.ts';
import { optionsChart } from './options-chart.ts';
import { skillChart, waitingChart } from './waiting-map.ts';

/**
 * The option that is looked at beside today: the best with the same hours; where none is better, the one with the best
 * value of all; null without any.
 */
export function shownOption({ plans, best, decidedBy }: StaffAnswer): StaffPlan | null {
  const options = plans.slice(1);
  const rankOf = ({ measures }: StaffPlan): number => {
    const measure = measures.find(({ name }) => name === decidedBy);
    if (measure?.value.kind !== 'estimate') return Number.POSITIVE_INFINITY;
    return measure.better === 'higher' ? -measure.value.value : measure.value.value;
  };
  const [top] = [...options].sort((one, other) => rankOf(one) - rankOf(other));
  return options.find(({ name }) => name === best?.name) ?? top ?? null;
}

/** The charts of an answer to whom to have when, in the order of the page. */
export function staffChartsOf(answer: StaffAnswer, size: ChartSize = 'wide'): Chart[] {
  return [
    optionsChart(answer, size),
    waitingChart(answer, shownOption(answer), size),
    skillChart(answer, size),
  ].filter((chart) => chart !== null);
}
