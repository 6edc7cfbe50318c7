import type { TargetAtLevel, TargetVerdict } from '@buildweek/results';
import { oneSidedConfidence, shareConfidence } from '@buildweek/statistics';
import { columns, measureEstimate } from '../plans/measure-estimates.ts';
import type { Observation } from '../plans/observed-plans.ts';
import { targetMeasureIndex } from '../targets/judged-targets.ts';
import type { ObservedTarget } from '../targets/observation.ts';

/**
 * Whether each target is met, as far as the replications tell.
 *
 * @param level one-sided confidence from which on it is called met, or missed
 */
export function judgeTargets(
  targets: readonly ObservedTarget[],
  observations: readonly Observation[],
  level: number,
): TargetAtLevel[] {
  return targets.map((target, position): TargetAtLevel => {
    const { met, missed } = confidences(target, position, observations);
    const verdict: TargetVerdict = met >= level ? 'met' : missed >= level ? 'missed' : 'not decided';
    return {
      share: measureEstimate(observations, targetMeasureIndex(position, 'share'), level, 1),
      verdict,
      confidence: verdict === 'missed' ? 1 - missed : met,
    };
  });
}

function confidences(
  { meaning }: ObservedTarget,
  position: number,
  observations: readonly Observation[],
): { met: number; missed: number } {
  if (meaning.kind === 'long run') {
    const met = oneSidedConfidence(columns(observations, targetMeasureIndex(position, 'value')).numerators);
    return { met, missed: 1 - met };
  }
  const periods = columns(observations, targetMeasureIndex(position, 'met')).numerators;
  const successes = periods.reduce((sum, one) => sum + one, 0);
  const { atLeast, atMost } = shareConfidence(successes, periods.length, meaning.chance);
  return { met: atLeast, missed: atMost };
}
