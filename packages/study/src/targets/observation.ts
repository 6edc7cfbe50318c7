import { type History, MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { JobSelection, Lab, OnTimeTarget, ShareWithinTarget, Target } from '@buildweek/model';
import { observedUse } from './observed-use.ts';

/** What one replication says of a target whose measure is a share. */
export interface TargetObservation {
  /** Jobs that do what is asked, or hours in use. */
  readonly numerator: number;
  /** Jobs that are meant, or hours that are counted; their ratio over all replications is what is measured. */
  readonly denominator: number;
  /**
   * A value whose mean is at least 0 exactly when the target is met. For the long run: how much more of the numerator
   * there is than the target asks for (for "at most": how much less), so that the mean is that of a ratio of means.
   * For the chance of a period: 1 or 0, as this period meets it, less the chance that is asked for.
   */
  readonly value: number;
}

/** A target that a history says something about; money is known otherwise. */
export type ObservedTarget = Extract<Target, { kind: 'share within' | 'on time' | 'busy' }>;

export function isObserved(target: Target): target is ObservedTarget {
  return target.kind === 'share within' || target.kind === 'on time' || target.kind === 'busy';
}

/**
 * What one replication says of a target.
 *
 * Jobs that were not finished at the cap count as later than everything, cancelled ones not at all. A period without
 * any such job meets its target: nothing in it was late.
 *
 * @param lab as it was played: its deadlines are those that the history counts by
 * @throws Error when the lab has no such deadline
 */
export function observeTarget(lab: Lab, target: ObservedTarget, history: History): TargetObservation {
  const { numerator, denominator } = observed(lab, target, history);
  const surplus =
    target.kind === 'busy' ? target.atMost * denominator - numerator : numerator - target.share * denominator;
  const { meaning } = target;
  // A share that is met exactly must not fail by rounding.
  const isMet = surplus >= -ROUNDING * denominator;
  const value = meaning.kind === 'long run' ? surplus : (isMet ? 1 : 0) - meaning.chance;
  return { numerator, denominator, value };
}

const ROUNDING = 1e-12;

function observed(
  lab: Lab,
  target: ObservedTarget,
  history: History,
): Pick<TargetObservation, 'numerator' | 'denominator'> {
  switch (target.kind) {
    case 'share within':
      return finishedWithin(lab, target, history);
    case 'on time':
      return keptPromises(target, history);
    case 'busy':
      return observedUse(target, history);
  }
}

function finishedWithin(lab: Lab, { jobs, within }: ShareWithinTarget, history: History) {
  const classes = classesOf(jobs, history);
  const denominator = total(classes, (found) => found.arrived - found.cancelled);
  if (within.kind === 'clock') {
    const most = Math.round(within.hours * MILLISECONDS_PER_HOUR);
    return { numerator: total(classes, (found) => countUpTo(found.leadTimes, most)), denominator };
  }
  const deadline = lab.deadlines.findIndex(
    ({ days, cutOffHour }) => days === within.days && cutOffHour === within.cutOffHour,
  );
  if (deadline < 0) throw new Error(`The lab does not count by ${within.days} working days.`);
  return { numerator: total(classes, (found) => found.endedBy?.[deadline] ?? 0), denominator };
}

function keptPromises({ jobs }: OnTimeTarget, history: History) {
  const classes = classesOf(jobs, history);
  return {
    numerator: total(classes, (found) => found.onTime),
    denominator: total(classes, (found) => found.promised),
  };
}

type JobClassHistory = History['jobClasses'][number];

function classesOf({ part, rush }: JobSelection, history: History): JobClassHistory[] {
  return history.jobClasses.filter(
    (found) => (part === null || found.part === part) && (rush === null || found.rush === rush),
  );
}

function total(classes: readonly JobClassHistory[], value: (found: JobClassHistory) => number): number {
  return classes.reduce((sum, found) => sum + value(found), 0);
}

/** How many of ascending values are at most so large. */
function countUpTo(ascending: Float64Array, most: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((ascending[middle] ?? Number.POSITIVE_INFINITY) <= most) low = middle + 1;
    else high = middle;
  }
  return low;
}
