import type { PlanMeasure, PlanPair } from '@buildweek/results';
import { individualLevel } from '@buildweek/statistics';
import { pairSentence } from './comparison-words.ts';
import { differencesOf } from './measure-differences.ts';
import { measureEstimate, mostOf } from './measure-estimates.ts';
import type { Observation, ObservedPlans } from './observed-plans.ts';
import type { Plan } from './plan.ts';
import type { ReplicationMeasure } from './replication-measure.ts';

/** Plans side by side, and what each changes against others. */
export interface ComparedPlans {
  /** One list for each plan, in the order of the measures. */
  readonly measures: readonly (readonly PlanMeasure[])[];
  readonly pairs: readonly PlanPair[];
  /** Level of each single difference. */
  readonly differencesLevel: number;
}

/** So many plans are each compared with each; of more, all with the first, because pairs soon are too many to read. */
const MOST_IN_ALL_PAIRS = 4;

/**
 * Compares plans on common random numbers: all with the first, and, where they are few, with each other. The levels of all differences are corrected after
 * Bonferroni, so that with the stated confidence none of them is wrong.
 * Source: A. M. Law and W. D. Kelton, Simulation Modeling and Analysis, third edition, sections 10.2.1 and 10.3.1.
 *
 * @param plans at least two, with different names
 * @param replications of each, at least 20
 * @param level of the whole answer
 * @param currency of the scenario, for sentences; null: it speaks of no money
 * @returns null when somebody stopped
 */
export async function comparePlans(
  plans: readonly Plan[],
  observed: ObservedPlans,
  replications: number,
  level: number,
  currency: string | null,
): Promise<ComparedPlans | null> {
  const [base] = plans;
  if (base === undefined || plans.length < 2) throw new RangeError('There is nothing to compare.');
  const measures = observed.measuresOf(base);
  const all: (readonly Observation[])[] = [];
  for (const plan of plans) {
    const found = await observed.observe(plan, replications);
    if (found === null) return null;
    all.push(found);
  }
  const pairs = pairsOf(plans.length);
  const differencesLevel = individualLevel(level, measures.length * pairs.length);
  const values = all.map((observations) => measuresOf(measures, observations, level));
  return {
    measures: values,
    differencesLevel,
    pairs: pairs.map(([from, to]): PlanPair => {
      const [plan, against] = [(plans[to] as Plan).name, (plans[from] as Plan).name];
      const differences = differencesOf(measures, all[from] ?? [], all[to] ?? [], differencesLevel);
      const [before = [], after = []] = [values[from], values[to]];
      return {
        plan,
        against,
        sentence: pairSentence({ plan, against, before, after, differences, currency }),
        differences,
      };
    }),
  };
}

/** Which plans are compared, by position: the earlier one, and what is held against it. */
function pairsOf(plans: number): (readonly [from: number, to: number])[] {
  const firsts = plans <= MOST_IN_ALL_PAIRS ? plans - 1 : 1;
  return Array.from({ length: firsts }, (_, from) =>
    Array.from({ length: plans - from - 1 }, (_, offset) => [from, from + offset + 1] as const),
  ).flat();
}

/** What a plan comes to in each measure. */
export function measuresOf(
  measures: readonly ReplicationMeasure[],
  observations: readonly Observation[],
  level: number,
): PlanMeasure[] {
  return measures.map(({ name, unit, better }, index) => ({
    name,
    unit,
    better,
    value: measureEstimate(observations, index, level, mostOf(unit)),
  }));
}
