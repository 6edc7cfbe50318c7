import { type History, MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { BusyTarget } from '@buildweek/model';
import {
  MACHINE_STATES,
  PERSON_STATES,
  STATION_STATES,
  type UnitState,
  useOfState,
} from '@buildweek/results';

interface Use {
  /** Hours in use. */
  readonly numerator: number;
  /** Hours of which they are a share. */
  readonly denominator: number;
}

/**
 * Hours in which people are at work or have other duties, of their hours on duty (overtime is neither); or hours in
 * which machines or stations are at work or out of order (maintenance, test prints, broken down), of all hours of the
 * clock: neither idle, nor waiting to fill, to be started or to be unloaded, nor off.
 */
export function observedUse(target: Pick<BusyTarget, 'of' | 'group'>, history: History): Use {
  switch (target.of) {
    case 'people':
      return peopleUse(target.group, history);
    case 'machines':
      return unitUse(history.machines, target.group, MACHINE_STATES);
    case 'stations':
      return unitUse(history.stations, target.group, STATION_STATES);
  }
}

function peopleUse(group: string | null, history: History): Use {
  let busy = 0;
  let onDuty = 0;
  for (const people of history.people) {
    if (group !== null && people.group !== group) continue;
    people.timeInState.forEach((time, entry) => {
      const state = PERSON_STATES[entry % PERSON_STATES.length];
      if (state === 'work' || state === 'other duties') busy += time;
      if (state === 'work' || state === 'other duties' || state === 'idle') onDuty += time;
    });
  }
  return { numerator: busy / MILLISECONDS_PER_HOUR, denominator: onDuty / MILLISECONDS_PER_HOUR };
}

function unitUse(units: History['machines'], group: string | null, states: readonly UnitState[]): Use {
  let busy = 0;
  let clock = 0;
  for (const unit of units) {
    if (group !== null && unit.group !== group) continue;
    unit.timeInState.forEach((time, position) => {
      const use = useOfState(states[position] ?? 'off');
      if (use === 'at work' || use === 'out of order') busy += time;
      clock += time;
    });
  }
  return { numerator: busy / MILLISECONDS_PER_HOUR, denominator: clock / MILLISECONDS_PER_HOUR };
}
