import { HOURS_PER_WEEK } from '@buildweek/core';
import type { Lab, LaunchRule } from '@buildweek/model';
import { workingDaysOfWeek } from './sent-out.ts';

/** Loads that are built or treated together, full ones counted. */
export interface Together {
  readonly loadsPerWeek: number;
  readonly fullPerWeek: number;
}

/**
 * How full a build or batch is at least when it starts, as a share of a full one: that of a single load, or what the
 * rule asks for. Where several conditions may start it, the one that lets it go with the least.
 * @param perLaunch loads with which each of the conditions other than fill is met on average
 */
export function leastFill(
  { loadsPerWeek, fullPerWeek }: Together,
  fullShare: number | null,
  perLaunch: readonly number[],
): number {
  if (loadsPerWeek === 0) return 1;
  const oneLoad = Math.min(1, fullPerWeek / loadsPerWeek);
  const byRule = [...(fullShare === null ? [] : [fullShare]), ...perLaunch.map((loads) => loads * oneLoad)];
  return Math.max(oneLoad, Math.min(1, ...byRule));
}

/** Loads that have come when the first has waited so long. */
export function loadsAfter(hours: number, loadsPerWeek: number): number {
  return 1 + (loadsPerWeek * hours) / HOURS_PER_WEEK;
}

/**
 * Loads with which the conditions of a launch rule other than fill are met on average; a promise at risk is left out.
 * Without any condition a build starts at once.
 */
export function loadsPerLaunch(lab: Lab, launch: LaunchRule, loadsPerWeek: number): number[] {
  const { fullShare, waitedHours, beforeClosing, fixedHours, promiseAtRisk } = launch;
  const atOnce =
    fullShare === null && waitedHours === null && !beforeClosing && fixedHours === null && !promiseAtRisk;
  return [
    ...(atOnce ? [1] : []),
    ...(waitedHours === null ? [] : [loadsAfter(waitedHours, loadsPerWeek)]),
    ...(beforeClosing ? [loadsPerWeek / workingDaysOfWeek(lab)] : []),
    ...(fixedHours === null || fixedHours.length === 0 ? [] : [loadsPerWeek / fixedHours.length]),
  ];
}
