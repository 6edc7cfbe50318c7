import { type History, MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type {
  CostPerPartTarget,
  Economics,
  JobSelection,
  Lab,
  OnTimeTarget,
  ShareWithinTarget,
  Target,
} from '@buildweek/model';
import { periodCosts } from '../money/period-costs.ts';
import { observedUse } from './observed-use.ts';

/** What one replication says of a target. */
export interface TargetObservation {
  /** Jobs that do what is asked, hours in use, or costs. */
  readonly numerator: number;
  /** Jobs that are meant, hours that are counted, or parts; the ratio over all replications is what is measured. */
  readonly denominator: number;
  /**
   * A value whose mean is at least 0 exactly when the target is met. For the long run: how much more of the numerator
   * there is than the target asks for (for "at most": how much less), so that the mean is that of a ratio of means.
   * For the chance of a period: 1 or 0, as this period meets it, less the chance that is asked for.
   */
  readonly value: number;
}

/** A target on a share of jobs or of hours, which a history says something about. */
export type ObservedTarget = Extract<Target, { kind: 'share within' | 'on time' | 'busy' }>;

export function isObserved(target: Target): target is ObservedTarget {
  return target.kind === 'share within' || target.kind === 'on time' || target.kind === 'busy';
}

/** A target that has to be played to be judged; a budget is known beforehand. */
export type PlayedTarget = ObservedTarget | CostPerPartTarget;

/**
 * What one replication says of a target.
 *
 * Jobs that were not finished at the cap count as later than everything, cancelled ones not at all. A period without
 * any such job meets its target: nothing in it was late.
 *
 * @param lab as it was played: its deadlines are those that the history counts by
 * @param economics needed for the cost per part alone
 * @throws Error when the lab has no such deadline, or there are no economics where they are needed
 */
export function observeTarget(
  lab: Lab,
  target: PlayedTarget,
  history: History,
  economics: Economics | null = null,
): TargetObservation {
  const { numerator, denominator } = observed(lab, target, history, economics);
  const surplus =
    'share' in target ? numerator - target.share * denominator : target.atMost * denominator - numerator;
  if (target.kind === 'cost per part' || target.meaning.kind === 'long run') {
    return { numerator, denominator, value: surplus };
  }
  // A share that is met exactly must not fail by rounding.
  const isMet = surplus >= -ROUNDING * denominator;
  return { numerator, denominator, value: (isMet ? 1 : 0) - target.meaning.chance };
}

const ROUNDING = 1e-12;

function observed(
  lab: Lab,
  target: PlayedTarget,
  history: History,
  economics: Economics | null,
): Pick<TargetObservation, 'numerator' | 'denominator'> {
  switch (target.kind) {
    case 'cost per part':
      return costOfParts(lab, economics, history);
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

function costOfParts(lab: Lab, economics: Economics | null, history: History) {
  if (economics === null) throw new Error('The cost per part needs to know what things cost.');
  const { total: costs, finishedParts } = periodCosts(lab, economics, history);
  return { numerator: costs, denominator: finishedParts };
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
