import type { Breakdown, Noticing, Phase, WorkKind } from '@buildweek/model';
import type { Floor, Task, Upkeep } from './floor.ts';
import { isOnDuty } from './floor.ts';
import type { Length } from './minutes.ts';
import { minutes } from './minutes.ts';
import type { Rank } from './rank.ts';
import type { Unit } from './unit.ts';

/** What goes wrong and how it is dealt with, one rule in one function, so that a mistake in it can be planted. */

/** Running hours pass in warm-up, print and cool-down in the machine, and in the run of a station. */
export function agesIn(phase: Phase | null): boolean {
  return phase === 'warm-up' || phase === 'cool-down' || phase === 'run' || isPrinting(phase);
}

function isPrinting(phase: Phase | null): boolean {
  return phase === 'first layers' || phase === 'print';
}

/** A breakdown in print loses the build where that is stated; one at any other time spares it. */
export function losesBuild(unit: Unit, phase: Phase, effect: Breakdown['effect']): boolean {
  return unit.kind === 'machine' && isPrinting(phase) && effect === 'loses the build';
}

/**
 * What is left of a phase after a repair. Attended phases around the run start again with the same length, and
 * so does the run of a station whose content is lost; what else runs goes on where it stopped.
 */
export function leftAfterRepair(
  phase: Phase,
  isAttended: boolean,
  effect: Breakdown['effect'],
  length: Length,
  done: number,
): Length {
  const startsAgain = phase === 'run' || isPrinting(phase) ? effect === 'loses the build' : isAttended;
  if (startsAgain) return length;
  return { actual: length.actual - done, typical: Math.max(0, length.typical - done) };
}

/** Who is at a machine sees that it stops; else as is stated for the machine. */
export function isNoticedAtOnce(somebodyIsAtIt: boolean): boolean {
  return somebodyIsAtIt;
}

/** Whether people notice in this minute that a machine has stopped or ended. */
export function isNoticedNow(floor: Floor, noticing: Noticing): boolean {
  const { now, people, attendedSince } = floor;
  const since = attendedSince[now] ?? -1;
  const somebodyComes = people.some(
    (person) => isOnDuty(person, now) && (now === 0 || !isOnDuty(person, now - 1)),
  );
  switch (noticing.kind) {
    case 'monitored':
      return true;
    case 'when somebody is in':
      return since >= 0;
    case 'on arrival':
      return somebodyComes;
    case 'rounds':
      return somebodyComes || (since >= 0 && (now - since) % minutes(noticing.everyHours) === 0);
  }
}

/**
 * A repair goes before rush; a chore ranks with the work at its unit, the one that has been owed longest first. Of
 * two that are equal in all else the unit with the lower number comes first; no job has so low a number.
 */
export function rankOfUpkeep({ item, unit }: Upkeep): Rank {
  const job = unit.number - 1_000_000;
  return item.breakdown === null
    ? { rush: 1, due: item.owedSince ?? 0, job }
    : { rush: -1, due: unit.down?.noticedAt ?? 0, job };
}

/** Among all that is not rush: with what the unit is. */
export function kindOfUpkeep({ unit }: Upkeep): WorkKind {
  return unit.kind;
}

/** Whether a service can come, or work on the machine, in this minute. */
export function serviceIsOpen(floor: Floor, calendar: string | null, minute: number): boolean {
  return calendar === null || (floor.serviceHours.get(calendar)?.[minute] ?? 0) > 0;
}

/** Whether something may run by itself from a minute on for so long: with permission, or with somebody in. */
export function mayRunAlone(floor: Floor, unit: Unit, from: number, length: number): boolean {
  const permission = floor.permissions.get(unit.group.name);
  if (permission === undefined) return true;
  for (let minute = from; minute < from + Math.max(1, length); minute++) {
    if (permission[minute] !== 1) return false;
  }
  return true;
}

/** Whether a step that goes on may be put aside for a rush job: normal work that may pause, of people on duty. */
export function mayBeInterrupted(floor: Floor, task: Task, rank: Rank): boolean {
  return (
    floor.lab.dispatch.rushInterrupts &&
    task.endsAt !== null &&
    task.mayPause &&
    rank.rush === 1 &&
    task.workers.every((person) => isOnDuty(person, floor.now))
  );
}
