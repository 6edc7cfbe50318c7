import { meanOf, varianceOf } from '@buildweek/core';
import type { Breakdown, Distribution, MachineGroup } from '@buildweek/model';
import { type Moments, mixtureOf, type Outages, sumOf } from '../formulas/process-time.ts';

/** @returns moments of a duration; nothing for none */
export function momentsOf(distribution: Distribution | undefined): Moments {
  if (distribution === undefined) return { mean: 0, variance: 0 };
  return { mean: meanOf(distribution), variance: varianceOf(distribution) };
}

/**
 * All breakdowns of a machine as one: their rates add up, their repairs mix. Breakdowns by the clock count as those by
 * running hours. The wait for a person who repairs is not in it, nor the hours in which nobody comes to repair.
 * @returns null when nothing breaks down
 */
export function outagesOf(breakdowns: readonly Breakdown[]): Outages | null {
  const rates = breakdowns.map(({ between, repair }) => ({
    weight: 1 / meanOf(between),
    time: repairTime(repair),
  }));
  const rate = rates.reduce((sum, { weight }) => sum + weight, 0);
  return rate === 0 ? null : { hoursToFailure: 1 / rate, repair: mixtureOf(rates) };
}

function repairTime(repair: Breakdown['repair']): Moments {
  return repair.kind === 'own'
    ? momentsOf(repair.work.duration.distribution)
    : sumOf([momentsOf(repair.response), momentsOf(repair.visit)]);
}

/** Builds that do not come out. */
export interface LostBuilds {
  /** Builds started in vain for each good one. */
  readonly perGoodBuild: number;
  /** What such a start costs the machine, hours. */
  readonly hours: number;
  /** Times that a job has to be built again, for each of its builds. */
  readonly perJob: number;
}

/**
 * Failures and breakdowns that lose the build, at even chance over the print: half of it is lost on average.
 * @param beforePrint hours of set-up and warm-up
 * @param jobs jobs in a build
 */
export function lostBuilds(
  group: MachineGroup,
  beforePrint: number,
  print: number,
  jobs: number,
): LostBuilds {
  const breaking = group.breakdowns
    .filter(({ effect }) => effect === 'loses the build')
    .reduce((sum, { between }) => sum + print / meanOf(between), 0);
  const { failure } = group;
  const failing = failure === null ? 0 : -Math.log1p(-failure.chancePerBuild) + failure.perPrintHour * print;
  const whole = again(breaking + (failure?.loses === 'the build' ? failing : 0));
  // The pieces of one job are built again; of the machine that takes the job's share of a build.
  const single = failure?.loses === 'one job' ? again(failing) / Math.max(1, jobs) : 0;
  const cleaning = momentsOf(failure?.cleaning?.duration.distribution).mean;
  return { perGoodBuild: whole + single, hours: beforePrint + print / 2 + cleaning, perJob: whole + single };
}

/** Further tries for each success when a try is lost with chance 1 − exp(−rate). */
function again(rate: number): number {
  return Math.expm1(rate);
}
