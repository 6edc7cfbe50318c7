import type { HandLoad, Results } from '@buildweek/results';
import type { UnitStates } from './states-of-units.ts';

/** A share with its interval. */
export interface ShareInterval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Simulated use of a group of resources. */
export interface SimulatedUse {
  /** Share of the time in which work goes on. */
  readonly working: ShareInterval;
  /** Share in which units are held, waiting for hands included; null for people. */
  readonly held: ShareInterval | null;
}

const WAITING = new Set(['waiting to start', 'waiting to be unloaded', 'down']);
const FREE = new Set(['idle', 'off']);

/**
 * Mean share over units and states. Half widths are added, which is at least as wide as the interval of the
 * sum (the standard deviation of a sum is at most the sum of the standard deviations).
 */
function meanShare(units: readonly UnitStates<string>[], counts: (state: string) => boolean): ShareInterval {
  const shares = units.flatMap((unit) =>
    unit.states.filter((one) => counts(one.state)).map((one) => one.share),
  );
  const mean = (pick: (share: (typeof shares)[number]) => number): number =>
    shares.reduce((sum, share) => sum + pick(share), 0) / units.length;
  return {
    value: mean((share) => share.value),
    low: Math.max(
      0,
      mean((share) => share.low),
    ),
    high: mean((share) => share.high),
  };
}

/** Mean share in which units are held: what idle and off leave, with their intervals turned round. */
function heldShare(units: readonly UnitStates<string>[]): ShareInterval {
  const free = meanShare(units, (state) => FREE.has(state));
  return { value: 1 - free.value, low: 1 - free.high, high: 1 - free.low };
}

/**
 * The simulated use that belongs to a line of the hand calculation, found by kind and name; null when the line
 * speaks of something that is no single group, as a skill that several groups share.
 */
export function simulatedUse(results: Results, hand: HandLoad): SimulatedUse | null {
  if (hand.kind === 'people') {
    const busy = results.people.find((group) => group.group === hand.name)?.busyShareOfDuty;
    return busy?.kind === 'estimate' ? { working: busy, held: null } : null;
  }
  const all: readonly (UnitStates<string> & { readonly group: string })[] =
    hand.kind === 'machine' ? results.machines : results.stations;
  const units = all.filter((unit) => unit.group === hand.name);
  if (units.length === 0) return null;
  return {
    working: meanShare(units, (state) => !FREE.has(state) && !WAITING.has(state)),
    held: heldShare(units),
  };
}
