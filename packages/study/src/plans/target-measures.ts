import type { Lab, Target } from '@buildweek/model';
import { isObserved, type ObservedTarget, observeTarget } from '../targets/observation.ts';
import type { ReplicationMeasure } from './replication-measure.ts';

/** The targets that a replication says something about, in their order. */
export function observedTargets(targets: readonly Target[]): ObservedTarget[] {
  return targets.filter(isObserved);
}

/** What each of them counts in a replication, as a measure: jobs that do what is asked of all that are meant. */
export function targetMeasures(lab: Lab, targets: readonly ObservedTarget[]): ReplicationMeasure[] {
  return targets.map((target) => ({
    name: target.wording,
    unit: 'share',
    better: betterWay(target),
    of: (history) => {
      const { numerator, denominator } = observeTarget(lab, target, history);
      return [numerator, denominator];
    },
  }));
}

/** Whether a target asks for at least a share, or for at most. */
export function betterWay({ kind }: ObservedTarget): 'higher' | 'lower' {
  return kind === 'busy' ? 'lower' : 'higher';
}

/** The share that a target asks for. */
export function askedShare(target: ObservedTarget): number {
  return target.kind === 'busy' ? target.atMost : target.share;
}
