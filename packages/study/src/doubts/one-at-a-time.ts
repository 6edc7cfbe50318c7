import type { Doubt, Lab } from '@buildweek/model';
import type { DoubtEnd } from '@buildweek/results';
import { measureDifference, measureEstimate, mostOf } from '../plans/measure-estimates.ts';
import type { Observation, ObservedPlans } from '../plans/observed-plans.ts';
import type { Plan } from '../plans/plan.ts';
import { applyDoubt } from './changes/apply-doubt.ts';

/** What one doubt does by itself, at either end of its range. */
export interface DoubtEffect {
  readonly doubt: Doubt;
  readonly low: DoubtEnd;
  readonly high: DoubtEnd;
  /** Larger of the two differences without its sign; null when neither is known. */
  readonly effect: number | null;
}

/** How ends of ranges are looked at. */
export interface EndsQuestion {
  readonly lab: Lab;
  readonly doubts: readonly Doubt[];
  /** Position of the measure among those of the plans. */
  readonly measure: number;
  readonly replications: number;
  readonly level: number;
  /** Level of each difference. */
  readonly differencesLevel: number;
}

/**
 * Sets each doubt to either end of its range, with all others as stated, and takes the difference to the lab as stated
 * on common random numbers.
 *
 * @param base observations of the lab as stated
 * @returns the largest effect first, what is not known last; null when somebody stopped
 */
export async function oneAtATime(
  question: EndsQuestion,
  base: readonly Observation[],
  plans: ObservedPlans,
): Promise<DoubtEffect[] | null> {
  const effects: DoubtEffect[] = [];
  for (const doubt of question.doubts) {
    const low = await endOf(doubt, doubt.low, question, base, plans);
    const high = low === null ? null : await endOf(doubt, doubt.high, question, base, plans);
    if (low === null || high === null) return null;
    const sizes = [low, high].flatMap(({ difference }) =>
      difference.kind === 'estimate' ? [Math.abs(difference.value)] : [],
    );
    effects.push({ doubt, low, high, effect: sizes.length === 0 ? null : Math.max(...sizes) });
  }
  // What lies beyond the end of what was played is larger than anything that has a number.
  const rank = ({ low, high, effect }: DoubtEffect): number =>
    [low, high].some(({ difference }) => difference.kind === 'never')
      ? Number.POSITIVE_INFINITY
      : (effect ?? Number.NEGATIVE_INFINITY);
  return effects.sort((one, other) => {
    const [first, second] = [rank(one), rank(other)];
    return first === second ? 0 : second - first;
  });
}

async function endOf(
  { name, about }: Doubt,
  factor: number,
  { lab, measure, replications, level, differencesLevel }: EndsQuestion,
  base: readonly Observation[],
  plans: ObservedPlans,
): Promise<DoubtEnd | null> {
  const plan: Plan = { name: `${name} × ${factor}`, lab: applyDoubt(lab, about, factor) };
  const observations = await plans.observe(plan, replications);
  if (observations === null) return null;
  const { difference, paired } = measureDifference(base, observations, measure, differencesLevel);
  const isSame = paired !== null && paired.value === 0 && paired.standardError === 0;
  const tells = difference.kind === 'estimate' && (difference.low > 0 || difference.high < 0);
  return {
    factor,
    value: measureEstimate(
      observations,
      measure,
      level,
      mostOf(plans.measuresOf(plan)[measure]?.unit ?? 'hours'),
    ),
    difference,
    outcome:
      difference.kind !== 'estimate'
        ? 'not compared'
        : isSame
          ? 'no difference'
          : tells
            ? 'differs'
            : 'not told apart',
  };
}
