import type { History, UnitHistory } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import {
  type Estimate,
  isHeld,
  MACHINE_STATES,
  PERSON_STATES,
  STATION_STATES,
  type UnitState,
  useOfState,
} from '@buildweek/results';
import { RunningMeans } from '@buildweek/statistics';
import { meanEstimate } from './estimates.ts';

/** How far a group of resources is used up. */
export interface GroupUse {
  readonly name: string;
  readonly kind: 'machine' | 'station' | 'people';
  /** Machines and stations: share of the time at work; people: share of the hours on duty. */
  readonly atWork: Estimate;
  /** Share of the time in which machines or stations wait to be started or emptied by people; null for people. */
  readonly waitingForPeople: Estimate | null;
  /** Share of the time in which they are not free: the two together, and what is out of order. */
  readonly held: Estimate;
}

/** Use of each group of machines, stations and people as a whole; for the headline. */
export class GroupUseSums {
  private readonly lab: Lab;
  /** For each group: at work, waiting for people, held. */
  private readonly means: RunningMeans;

  constructor(lab: Lab) {
    this.lab = lab;
    this.means = new RunningMeans(3 * (lab.machines.length + lab.stations.length + lab.people.length));
  }

  add(history: History): void {
    const { lab } = this;
    const windowLength = history.windowEnd - history.windowStart;
    this.means.add([
      ...lab.machines.flatMap(({ name }) => useOf(history.machines, name, MACHINE_STATES, windowLength)),
      ...lab.stations.flatMap(({ name }) => useOf(history.stations, name, STATION_STATES, windowLength)),
      ...lab.people.flatMap(({ name }) => {
        const busy = busyShare(history, name);
        return [busy, 0, busy];
      }),
    ]);
  }

  results(level: number): GroupUse[] {
    const { machines, stations, people } = this.lab;
    const groups = [
      ...machines.map(({ name }) => ({ name, kind: 'machine' as const })),
      ...stations.map(({ name }) => ({ name, kind: 'station' as const })),
      ...people.map(({ name }) => ({ name, kind: 'people' as const })),
    ];
    return groups.map((group, index) => ({
      ...group,
      atWork: meanEstimate(this.means, 3 * index, level, 1),
      waitingForPeople: group.kind === 'people' ? null : meanEstimate(this.means, 3 * index + 1, level, 1),
      held: meanEstimate(this.means, 3 * index + 2, level, 1),
    }));
  }
}

function useOf(
  units: readonly UnitHistory[],
  group: string,
  states: readonly UnitState[],
  windowLength: number,
): [number, number, number] {
  const own = units.filter((unit) => unit.group === group);
  let atWork = 0;
  let waiting = 0;
  let held = 0;
  for (const unit of own) {
    unit.timeInState.forEach((time, position) => {
      const state = states[position] ?? 'off';
      const use = useOfState(state);
      if (use === 'at work') atWork += time;
      if (use === 'waiting for people') waiting += time;
      if (isHeld(state)) held += time;
    });
  }
  const total = Math.max(1, own.length * windowLength);
  return [atWork / total, waiting / total, held / total];
}

function busyShare(history: History, group: string): number {
  let busy = 0;
  let idle = 0;
  for (const people of history.people) {
    if (people.group !== group) continue;
    people.timeInState.forEach((time, entry) => {
      const state = PERSON_STATES[entry % PERSON_STATES.length];
      if (state === 'work' || state === 'other duties') busy += time;
      if (state === 'idle') idle += time;
    });
  }
  return busy + idle === 0 ? 0 : busy / (busy + idle);
}
