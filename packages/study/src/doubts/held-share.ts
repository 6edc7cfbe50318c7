import type { Estimate, HeldTarget } from '@buildweek/results';
import { clopperPearsonInterval } from '@buildweek/statistics';
import { columns } from '../plans/measure-estimates.ts';
import type { Observation } from '../plans/observed-plans.ts';
import { targetMeasureIndex } from '../targets/judged-targets.ts';
import type { ObservedTarget } from '../targets/observation.ts';

/**
 * In which share of periods targets hold, as stated and in the drawn worlds, with exact intervals. One period is played
 * in each world, so the shares are of pairs of a world and a period.
 */
export function heldTargets(
  targets: readonly ObservedTarget[],
  base: readonly Observation[],
  worlds: readonly Observation[],
  level: number,
): { readonly held: HeldTarget[]; readonly allHeld: HeldTarget | null } {
  const held = targets.map(
    ({ wording }, position): HeldTarget => ({
      target: wording,
      asStated: shareOf(base, [position], level),
      inWorlds: shareOf(worlds, [position], level),
    }),
  );
  if (targets.length < 2) return { held, allHeld: null };
  const all = targets.map((_, position) => position);
  return {
    held,
    allHeld: {
      target: 'all targets at once',
      asStated: shareOf(base, all, level),
      inWorlds: shareOf(worlds, all, level),
    },
  };
}

function shareOf(observations: readonly Observation[], targets: readonly number[], level: number): Estimate {
  const met = targets.map((target) => columns(observations, targetMeasureIndex(target, 'met')).numerators);
  const periods = observations.filter((_, replication) => met.every((values) => values[replication] === 1));
  const { value, low, high } = clopperPearsonInterval(periods.length, observations.length, level);
  return { kind: 'estimate', value, low, high, level, replications: observations.length };
}
