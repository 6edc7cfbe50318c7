import type { TargetAtLevel } from '@buildweek/results';
import { columns, measureEstimate } from '../plans/measure-estimates.ts';
import type { Observation } from '../plans/observed-plans.ts';
import { targetMeasureIndex } from '../targets/judged-targets.ts';
import type { ObservedTarget } from '../targets/observation.ts';
import { TargetSeries } from '../targets/target-series.ts';
import { confidenceOf, verdictOf } from '../targets/target-sums.ts';

/**
 * Whether each target is met, as far as the replications tell: as a run judges them.
 *
 * @param level one-sided confidence from which on it is called met, or missed
 */
export function judgeTargets(
  targets: readonly ObservedTarget[],
  observations: readonly Observation[],
  level: number,
): TargetAtLevel[] {
  return targets.map((target, position): TargetAtLevel => {
    const share = measureEstimate(observations, targetMeasureIndex(position, 'share'), level, 1);
    const series = seriesOf(position, observations);
    if (series.isEmpty) return { share, verdict: 'not decided', confidence: 0 };
    const confidence = confidenceOf(target, series);
    const verdict = verdictOf(confidence, level);
    return {
      share,
      verdict,
      confidence: verdict === 'missed' ? 1 - confidence.missed : confidence.met,
    };
  });
}

function seriesOf(position: number, observations: readonly Observation[]): TargetSeries {
  const { numerators, denominators } = columns(observations, targetMeasureIndex(position, 'share'));
  const { numerators: values } = columns(observations, targetMeasureIndex(position, 'value'));
  const series = new TargetSeries();
  numerators.forEach((numerator, replication) => {
    series.add({
      numerator,
      denominator: denominators[replication] ?? 0,
      value: values[replication] ?? 0,
    });
  });
  return series;
}
