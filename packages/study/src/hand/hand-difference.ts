import {
  type ComparedHours,
  type Estimate,
  formatNumber,
  type HandDifference,
  type HandLeadTime,
  type JobClass,
  type PartHours,
  toldInDays,
} from '@buildweek/results';
import { DAYS, durationWords, HOURS, type TimeUnit } from '../words/figures.ts';
import { comparedHours, type SimulatedHours, simulatedHours } from './compared-hours.ts';
import type { PartEstimate } from './lead-time/hand-lead-times.ts';

/** From this ratio on, either way, a difference is explained. */
const FACTOR = 2;

/** What the simulation found. */
export interface Found {
  readonly jobs: readonly JobClass[];
  readonly hours: readonly PartHours[];
}

/** Lead times by hand, each with a sentence where the simulation differs from it by more than a factor of two. */
export function withDifferences(estimates: readonly PartEstimate[], found: Found): HandLeadTime[] {
  return estimates.map((one) => ({ ...one, difference: differenceOf(one, found) }));
}

function differenceOf({ part, estimate }: PartEstimate, { jobs, hours }: Found): HandDifference | null {
  const all = jobs.filter(({ priority }) => priority === 'all');
  const simulated = all.find((one) => one.part === part)?.meanLeadTime;
  if (estimate.kind === 'refused' || simulated?.kind !== 'estimate' || estimate.leadTimeHours === 0)
    return null;
  const ratio = simulated.value / estimate.leadTimeHours;
  if (ratio <= FACTOR && ratio >= 1 / FACTOR) return null;
  const meant = hours.flatMap((one) => {
    const own = all.find((candidate) => candidate.part === one.part);
    const isMeant = part === null || part === one.part;
    return isMeant && own !== undefined ? [{ hours: one, jobs: own.jobs - own.unfinished }] : [];
  });
  if (meant.length === 0) return null;
  const spent = simulatedHours(meant);
  const direction = ratio > 1 ? 1 : -1;
  const compared = comparedHours(spent, estimate).sort(
    (one, other) => direction * (excessOf(other) - excessOf(one)),
  );
  const unit = toldInDays(jobs) ? DAYS : HOURS;
  const found = simulatedWords(simulated, unit);
  const who = part === null ? 'an average job' : `“${part}”`;
  const byHand = spanWords(estimate.leadTimeHours, unit);
  return {
    ratio,
    sentence: `The simulation finds ${found} for ${who} where the formula says ${byHand}: ${reasonWords(compared, spent, direction, unit)}.`,
    hours: compared,
  };
}

function excessOf({ simulated, byHand }: ComparedHours): number {
  return simulated - byHand;
}

/** A second reason is told when it is at least this share of the first. */
const WORTH_TELLING = 0.5;

function reasonWords(
  compared: readonly ComparedHours[],
  spent: SimulatedHours,
  direction: 1 | -1,
  unit: TimeUnit,
): string {
  const [first, second] = compared;
  if (first === undefined) return '';
  const words = (one: ComparedHours): string =>
    direction > 0 ? moreWords(one, spent, unit) : lessWords(one, unit);
  const tellsSecond =
    second !== undefined && direction * excessOf(second) >= WORTH_TELLING * direction * excessOf(first);
  return tellsSecond ? `${words(first)}; ${words(second)}` : words(first);
}

/** Why the simulation finds more. */
function moreWords(hours: ComparedHours, { waits }: SimulatedHours, unit: TimeUnit): string {
  const span = spanWords(hours.simulated, unit);
  const simulated = `about ${span} of the simulated time`;
  const be = span.startsWith('1 ') ? 'is' : 'are';
  const both = `${simulated}, by hand ${spanWords(hours.byHand, unit)},`;
  switch (hours.what) {
    case 'people':
      return (waits.get('shift') ?? 0) > 0
        ? `the formula knows no shifts, and ${simulated} ${be} waiting for a shift or a person`
        : `the formula spreads the work of people evenly over their hours, and ${both} ${be} waiting for a person`;
    case 'equipment':
      return `the formula knows no machine that waits for people to start or empty it, and ${both} ${be} waiting for a machine or station`;
    case 'equipment down':
      return `the formula knows nobody to wait for when something breaks down, and ${both} ${be} waiting for what is down`;
    case 'batch':
      return `the formula takes builds and batches to start as soon as it pays, and ${both} ${be} waiting for one to fill`;
    case 'carrier':
      return `the formula knows no carriers, and ${simulated} ${be} waiting for one`;
    case 'requester':
      return `the formula knows no changed files, and ${both} ${be} waiting for requesters`;
    case 'rest of the job':
      return `the formula takes the pieces of a job together, and ${simulated} ${be} waiting for the rest of a job`;
    case 'stages':
      return `the formula takes the stages themselves to be shorter, and ${both} ${be} work`;
  }
}

/** Why the simulation finds less. */
function lessWords({ what, simulated, byHand }: ComparedHours, unit: TimeUnit): string {
  const both = `${spanWords(byHand, unit)} by hand, about ${spanWords(simulated, unit)} simulated`;
  switch (what) {
    case 'people':
      return `the formula takes all work of people as coming at random, and has more waiting for them (${both})`;
    case 'equipment':
      return `the formula takes all that comes to machines and stations as coming at random and lets nobody join late, and has more waiting for them (${both})`;
    case 'equipment down':
      return `the formula charges every job with breakdowns and builds in vain (${both})`;
    case 'batch':
      return `the formula lets every build and batch wait until it is as full as on average (${both})`;
    case 'requester':
      return `the formula has more waiting for requesters (${both})`;
    case 'stages':
      return `the formula has longer stages, one after the other (${both})`;
    case 'carrier':
    case 'rest of the job':
      return `the formula knows no such waiting (${both})`;
  }
}

function simulatedWords(estimate: Estimate, unit: TimeUnit): string {
  return durationWords(estimate, estimate.value < 0.1 * unit.size ? HOURS : unit);
}

/** `1.3 days`; in hours where a day is too coarse. */
function spanWords(hours: number, unit: TimeUnit): string {
  if (hours === 0) return 'none';
  const { size, one, many } = hours < 0.1 * unit.size ? HOURS : unit;
  const value = formatNumber(hours / size, hours / size < 0.1 ? 2 : 1);
  return `${value} ${Number(value) === 1 ? one : many}`;
}
