import type { Estimate, HandLoad, Results, UnitState } from '@buildweek/results';
import { meanShareAtWork, meanShareHeld, type UnitStates } from './states-of-units.ts';

/** Simulated use of a group of resources. */
export interface SimulatedUse {
  /** Share of the time in which work goes on. */
  readonly working: Estimate;
  /** Share in which units are held, waiting for people and repairs included; null for people. */
  readonly held: Estimate | null;
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
  const all: readonly (UnitStates<UnitState> & { readonly group: string })[] =
    hand.kind === 'machine' ? results.machines : results.stations;
  const units = all.filter((unit) => unit.group === hand.name);
  if (units.length === 0) return null;
  return { working: meanShareAtWork(units), held: meanShareHeld(units) };
}
