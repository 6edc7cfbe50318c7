import type { Lab } from '@buildweek/model';
import {
  figureOf,
  formatNumber,
  type HandLoad,
  type PlanAnswer,
  type PlanMeasure,
  writtenUnit,
} from '@buildweek/results';
import { handAnswer } from '../hand/hand-answer.ts';

/** What a page of arithmetic says of a plan that was played. */
export interface HandBeside {
  /** Mean lead time of all jobs, hours; null where the formulas give none. */
  readonly handHours: number | null;
  readonly handCalculation: HandLoad[];
  readonly fewestByHand: PlanAnswer['fewestByHand'];
}

/** From this ratio on, either way, a difference is explained. */
const FACTOR = 2;

/** @param weeks over which demand and working hours are averaged */
export function handBeside(lab: Lab, weeks: number): HandBeside {
  const { loads, leadTimes, fewest } = handAnswer(lab, { fromWeek: 0, weeks });
  const all = leadTimes.find(({ part }) => part === null)?.estimate;
  return {
    handHours: all?.kind === 'by hand' ? all.leadTimeHours : null,
    handCalculation: [...loads],
    fewestByHand: fewest.map(({ name, belowFull, comfortable }) => ({
      name,
      belowOne: belowFull,
      comfortable,
    })),
  };
}

const REASONS: readonly { readonly measure: string; readonly words: string }[] = [
  {
    measure: 'wait for people',
    words: 'waiting for people and for the shift to begin, and the formulas know no shifts',
  },
  { measure: 'wait for a build to fill', words: 'waiting for a build or batch to fill' },
  {
    measure: 'wait for machines',
    words: 'waiting for machines, which the formulas take to be fuller or freer of trouble',
  },
];

/**
 * Simulation and formula side by side, and the reason that the model knows where they differ by more than a factor of
 * two.
 *
 * @param measures of the plan, as they were simulated
 */
export function handSentence(measures: readonly PlanMeasure[], handHours: number | null): string {
  const simulated = measures.find(({ name }) => name === 'mean lead time')?.value;
  if (handHours === null)
    return 'By hand there is no lead time: some load is 100 % or more, so that a queue grows without end.';
  if (simulated?.kind !== 'estimate') return '';
  const unit = writtenUnit('hours', [simulated.value, handHours], null);
  const { value } = figureOf(simulated, unit.size, unit.leastDecimals);
  const byHand = formatNumber(handHours / unit.size, unit.leastDecimals);
  const both = `The mean lead time is ${value} ${unit.many} simulated and ${byHand} by formulas of queues`;
  const ratio = simulated.value / handHours;
  if (ratio <= FACTOR && ratio >= 1 / FACTOR) return `${both}.`;
  if (ratio < 1) {
    return `${both}: rush jobs first, builds that start before they are full and people who share work do better than the formulas allow.`;
  }
  const waits = REASONS.flatMap(({ measure, words }) => {
    const found = measures.find(({ name }) => name === measure)?.value;
    return found?.kind === 'estimate' ? [{ hours: found.value, words }] : [];
  }).sort((one, other) => other.hours - one.hours);
  const [most] = waits;
  if (most === undefined) return `${both}.`;
  return `${both}: of the simulated time ${formatNumber(most.hours / unit.size, unit.leastDecimals)} ${unit.many} are ${most.words}.`;
}
