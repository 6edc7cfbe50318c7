import { formatProblem, readScenario } from '@buildweek/scenario';
import {
  comparePlans,
  createInProcessExecutor,
  ObservedPlans,
  type Plan,
  type ReplicationMeasure,
} from '@buildweek/study';
import { LEVEL } from './value-suite.ts';

/** How a comparison is played. */
export interface ComparisonPlay {
  readonly weeks: number;
  readonly ignoredWeeks: number;
  readonly replications: number;
}

const MILLISECONDS_PER_HOUR = 3_600_000;

const MEAN_LEAD_TIME: ReplicationMeasure = {
  name: 'mean lead time',
  unit: 'hours',
  better: 'lower',
  of: ({ jobClasses }) => {
    const times = jobClasses.flatMap(({ leadTimes, unfinished }) =>
      unfinished > 0 ? [Number.POSITIVE_INFINITY] : [...leadTimes],
    );
    return [times.reduce((sum, time) => sum + time, 0) / MILLISECONDS_PER_HOUR, times.length];
  },
};

/** How much longer the mean lead time of the second plan is, on common random numbers, with its interval. */
export async function meanDifference(plans: readonly Plan[], play: ComparisonPlay, seed: string) {
  const { weeks, ignoredWeeks, replications } = play;
  const observed = new ObservedPlans({
    measures: () => [MEAN_LEAD_TIME],
    template: { seed, ignoredWeeks, weeks, capWeeks: 1, trace: false, queueWaits: false },
    executor: createInProcessExecutor(),
  });
  const compared = await comparePlans(plans, observed, replications, LEVEL, null);
  const found = compared?.pairs[0]?.differences[0]?.difference;
  if (found?.kind !== 'estimate') throw new Error(`"${seed}" gives no interval.`);
  return found;
}

/** @throws Error when the scenario has problems */
export function readPlan(text: string, index: number): Plan {
  const name = `plan ${index}`;
  const reading = readScenario(text, `${name}.yaml`);
  if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
  return { name, lab: reading.lab };
}
