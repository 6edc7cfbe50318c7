import type { History, UnitHistory } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { type Estimate, MACHINE_STATES, PERSON_STATES, STATION_STATES } from '@buildweek/results';
import { RunningMeans } from '@buildweek/statistics';
import { meanEstimate } from './estimates.ts';

/** How far a group of resources is used up. */
export interface GroupUse {
  readonly name: string;
  readonly kind: 'machine' | 'station' | 'people';
  /** Machines and stations: share of the time in which they are held; people: share of the hours on duty at work. */
  readonly share: Estimate;
}

/** Use of each group of machines, stations and people as a whole; for the headline. */
export class GroupUseSums {
  private readonly lab: Lab;
  private readonly means: RunningMeans;

  constructor(lab: Lab) {
    this.lab = lab;
    this.means = new RunningMeans(lab.machines.length + lab.stations.length + lab.people.length);
  }

  add(history: History): void {
    const { lab } = this;
    const windowLength = history.windowEnd - history.windowStart;
    this.means.add([
      ...lab.machines.map((group) => heldShare(history.machines, group.name, MACHINE_STATES, windowLength)),
      ...lab.stations.map((group) => heldShare(history.stations, group.name, STATION_STATES, windowLength)),
      ...lab.people.map((group) => busyShare(history, group.name)),
    ]);
  }

  results(level: number): GroupUse[] {
    const { machines, stations, people } = this.lab;
    const names = [
      ...machines.map(({ name }) => ({ name, kind: 'machine' as const })),
      ...stations.map(({ name }) => ({ name, kind: 'station' as const })),
      ...people.map(({ name }) => ({ name, kind: 'people' as const })),
    ];
    return names.map((group, index) => ({ ...group, share: meanEstimate(this.means, index, level) }));
  }
}

function heldShare(
  units: readonly UnitHistory[],
  group: string,
  states: readonly string[],
  windowLength: number,
): number {
  const own = units.filter((unit) => unit.group === group);
  if (own.length === 0) return 0;
  const free = new Set(['idle', 'off']);
  let held = 0;
  for (const unit of own) {
    unit.timeInState.forEach((time, state) => {
      if (!free.has(states[state] ?? 'idle')) held += time;
    });
  }
  return held / (own.length * windowLength);
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
