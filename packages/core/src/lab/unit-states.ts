import { MACHINE_STATES, STATION_STATES } from '@buildweek/results';
import type { Unit } from './unit.ts';

/** Positions of the states in which machines and stations wait for a run; the same in both lists of states. */
export const IDLE = positionInBoth('idle');
export const WAITING_TO_START = positionInBoth('waiting to start');
export const WAITING_TO_FILL = positionInBoth('waiting to fill');

/** Positions of states of machines: only their builds fail, and have to be cleared away. */
export const WAITING_TO_BE_UNLOADED = MACHINE_STATES.indexOf('waiting to be unloaded');
export const UNLOAD = MACHINE_STATES.indexOf('unload');

/** The state of a machine or station that holds no run, or is down. */
export function stateAtRest(unit: Unit, isMachine: boolean): number {
  const states: readonly string[] = isMachine ? MACHINE_STATES : STATION_STATES;
  if (unit.isDown) return states.indexOf('down');
  if (unit.chore !== null) return states.indexOf(unit.chore.chore?.kind ?? 'maintenance');
  if (unit.isAway) return states.indexOf('off');
  return IDLE;
}

function positionInBoth(state: 'idle' | 'waiting to start' | 'waiting to fill'): number {
  const position = MACHINE_STATES.indexOf(state);
  if (STATION_STATES.indexOf(state) !== position) throw new Error(`"${state}" has two positions.`);
  return position;
}
