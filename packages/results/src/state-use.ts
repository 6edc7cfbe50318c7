import type { MachineState, StationState } from './measures.ts';

export type UnitState = MachineState | StationState;

/** What the states of a machine or a station come to, where a few words have to do. */
export type StateUse = 'free' | 'at work' | 'waiting for people' | 'out of order' | 'away';

const USES: Readonly<Record<UnitState, StateUse>> = {
  idle: 'free',
  'waiting to fill': 'free',
  'waiting to start': 'waiting for people',
  prepare: 'at work',
  'set-up': 'at work',
  'warm-up': 'at work',
  print: 'at work',
  'cool-down': 'at work',
  load: 'at work',
  run: 'at work',
  'waiting to be unloaded': 'waiting for people',
  unload: 'at work',
  maintenance: 'out of order',
  'test print': 'out of order',
  down: 'out of order',
  off: 'away',
};

/** The same for headline, charts and tables, so that they agree on what counts as work. */
export function useOfState(state: UnitState): StateUse {
  return USES[state];
}

/** Whether nothing else can use the machine or station in this state, though it is there. */
export function isHeld(state: UnitState): boolean {
  const use = USES[state];
  return use !== 'free' && use !== 'away';
}
