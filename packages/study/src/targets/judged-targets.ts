import type { Lab, OnTimeTarget, Target } from '@buildweek/model';
import type { ReplicationMeasure } from '../plans/replication-measure.ts';
import { observedTargets } from '../plans/target-measures.ts';
import { isObserved, type ObservedTarget, observeTarget } from './observation.ts';

/** Measures of one target, in the order in which {@link judgedMeasures} gives them. */
const TARGET_MEASURES = ['share', 'value', 'met'] as const;
export type TargetMeasure = (typeof TARGET_MEASURES)[number];

/**
 * What a target comes to in one replication: the share that it is about; the value whose mean is at least 0 exactly
 * when it is met; and whether this period meets it.
 */
export function judgedMeasures(lab: Lab, targets: readonly ObservedTarget[]): ReplicationMeasure[] {
  return targets.flatMap((target): ReplicationMeasure[] => {
    const measure = (
      what: TargetMeasure,
      of: (found: ReturnType<typeof observeTarget>) => readonly [number, number],
    ): ReplicationMeasure => ({
      name: what === 'share' ? target.wording : `${target.wording}: ${what}`,
      unit: 'share',
      better: target.kind === 'busy' && what === 'share' ? 'lower' : 'higher',
      of: (history) => of(observeTarget(lab, target, history)),
    });
    const { meaning } = target;
    return [
      measure('share', ({ numerator, denominator }) => [numerator, denominator]),
      measure('value', ({ value }) => [value, 1]),
      measure('met', ({ value, denominator }) => {
        const surplus = meaning.kind === 'long run' ? value : value + meaning.chance - HALF;
        // A share that is met exactly must not fail by rounding.
        return [surplus >= -ROUNDING * denominator ? 1 : 0, 1];
      }),
    ];
  });
}

const ROUNDING = 1e-12;
const HALF = 0.5;

/** Position of a measure of a target, when those of targets come first. */
export function targetMeasureIndex(target: number, what: TargetMeasure): number {
  return target * TARGET_MEASURES.length + TARGET_MEASURES.indexOf(what);
}

const USUAL_SHARE = 0.9;

/** What is asked of a lab whose scenario states no target: that most promises are kept. Common practice, no source. */
const USUAL_TARGET: OnTimeTarget = {
  kind: 'on time',
  wording: `on time at least ${USUAL_SHARE * 100} %`,
  jobs: { part: null, rush: null },
  share: USUAL_SHARE,
  meaning: { kind: 'long run' },
};

/** The targets that playing says something about. */
export interface AskedTargets {
  readonly targets: readonly ObservedTarget[];
  /** Whether the scenario states none, so that the usual one is taken. */
  readonly areUsual: boolean;
  /** Wordings of those that are about money, which are not looked at. */
  readonly leftOut: readonly string[];
}

/** @returns no target at all for a lab without stated targets that makes no promises */
export function askedTargets(lab: Lab, targets: readonly Target[]): AskedTargets {
  const observed = observedTargets(targets);
  const leftOut = targets.filter((target) => !isObserved(target)).map(({ wording }) => wording);
  if (observed.length > 0) return { targets: observed, areUsual: false, leftOut };
  const promises = lab.demand.some(({ due, rushDue }) => due.kind !== 'none' || rushDue.kind !== 'none');
  return { targets: promises ? [USUAL_TARGET] : [], areUsual: true, leftOut };
}
