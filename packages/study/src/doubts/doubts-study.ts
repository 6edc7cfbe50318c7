import type { Doubt, Lab } from '@buildweek/model';
import type { DoubtsAnswer, HeldTarget } from '@buildweek/results';
import { individualLevel } from '@buildweek/statistics';
import { measureEstimate, mostOf } from '../plans/measure-estimates.ts';
import type { ObservedPlans } from '../plans/observed-plans.ts';
import { targetMeasureIndex } from '../targets/judged-targets.ts';
import type { ObservedTarget } from '../targets/observation.ts';
import { doubtSentences } from './doubt-sentences.ts';
import { DrawnWorlds } from './drawn-worlds.ts';
import { explainedShares } from './explained-shares.ts';
import { heldTargets } from './held-share.ts';
import { oneAtATime } from './one-at-a-time.ts';

/** Which assumptions of a lab matter. */
export interface DoubtsQuestion {
  readonly lab: Lab;
  readonly doubts: readonly Doubt[];
  /** Whose measures come first among those of the plans. */
  readonly targets: readonly ObservedTarget[];
  /**
   * Position among the measures of the plans of what the effects are looked at for; null: what the target that fails
   * most often in the drawn worlds is about.
   */
  readonly measure: number | null;
  readonly replications: number;
  readonly worlds: number;
  readonly seed: string;
  readonly level: number;
  readonly weeks: number;
}

/** What a study finds out of it. */
export type DoubtsFound = Pick<
  DoubtsAnswer,
  'differencesLevel' | 'measure' | 'doubts' | 'explainedTogether' | 'held' | 'allHeld' | 'verdict'
>;

/** How many replications it takes in all. */
export function replicationsOfDoubts({ doubts, replications, worlds }: DoubtsQuestion): number {
  return replications * (1 + 2 * doubts.length) + worlds;
}

/**
 * Looks at doubts one at a time over their ranges, and together in drawn worlds.
 *
 * @returns null when somebody stopped
 */
export async function doubtsStudy(
  question: DoubtsQuestion,
  plans: ObservedPlans,
): Promise<DoubtsFound | null> {
  const { lab, doubts, targets, replications, level } = question;
  const stated = { name: 'as stated', lab };
  const base = await plans.observe(stated, replications);
  if (base === null) return null;
  const drawn = new DrawnWorlds(lab, doubts, question.seed);
  const worlds = await plans.observeWorlds(drawn, question.worlds);
  if (worlds === null) return null;
  const { held, allHeld } = heldTargets(targets, base, worlds, level);
  const measure = question.measure ?? targetMeasureIndex(weakest(held), 'share');
  const differencesLevel = individualLevel(level, 2 * doubts.length);
  const effects = await oneAtATime({ ...question, measure, differencesLevel }, base, plans);
  if (effects === null) return null;
  const factors = worlds.map((_, replication) => drawn.factorsOf(replication));
  const explained = explainedShares(factors, worlds, measure, level);
  const looked = plans.measuresOf(stated)[measure];
  if (looked === undefined) throw new RangeError(`There is no measure at position ${measure}.`);
  const { name, unit, better } = looked;
  const found = {
    differencesLevel,
    measure: {
      name,
      unit,
      better,
      asStated: measureEstimate(base, measure, level, mostOf(unit)),
      isRanked: explained.isRanked,
    },
    doubts: effects.map(({ doubt, low, high, effect }) => ({
      name: doubt.name,
      low,
      typical: doubt.typical,
      high,
      effect,
      explains: explained.doubts[doubts.indexOf(doubt)] ?? {
        kind: 'refused' as const,
        reason: 'It was not looked at.',
      },
    })),
    explainedTogether: explained.together,
    held,
    allHeld,
  };
  return { ...found, verdict: doubtSentences(found, question.weeks) };
}

/** Position of the target that holds in the fewest worlds: what is to be known is what may break it. */
function weakest(held: readonly HeldTarget[]): number {
  return held.reduce(
    (least, { inWorlds }, position) =>
      inWorlds.value < (held[least]?.inWorlds.value ?? 1) ? position : least,
    0,
  );
}
