import type { Floor, Job, OracleEvent, Person, Task } from './floor.ts';
import { stageOf } from './floor.ts';
import type { Unit } from './unit.ts';

const MINUTE = 60_000;

export function noteJob(floor: Floor, what: 'job arrives' | 'job ends', job: Job): void {
  floor.events.push({
    time: floor.now * MINUTE,
    what,
    job: job.number,
    part: job.part.name,
    stage: null,
    phase: null,
    unit: null,
    persons: [],
    pieces: job.quantity,
  });
}

/** One line for each job that is in the step. */
export function noteTask(floor: Floor, what: OracleEvent['what'], task: Task): void {
  if (task.upkeep !== null && task.hands !== null) {
    const persons = task.workers.map((person) => person.name);
    noteUnit(floor, what, task.upkeep.unit, task.upkeep.item.name, persons);
  }
  for (const lot of task.loads.flatMap((load) => load.lots)) {
    floor.events.push({
      time: floor.now * MINUTE,
      what,
      job: lot.job.number,
      part: lot.job.part.name,
      stage: stageOf(lot).name,
      phase: task.phase,
      unit: task.run?.unit.name ?? null,
      persons: task.workers.map((person) => person.name),
      pieces: lot.pieces,
    });
  }
}

/** What happens to a machine or station itself; no job is named. */
export function noteUnit(
  floor: Floor,
  what: OracleEvent['what'],
  unit: Unit,
  item: string,
  persons: readonly string[] = [],
): void {
  floor.events.push({
    time: floor.now * MINUTE,
    what,
    job: -1,
    part: null,
    stage: null,
    phase: item,
    unit: unit.name,
    persons,
    pieces: 0,
  });
}

export function notePerson(floor: Floor, what: 'on duty' | 'off duty', person: Person): void {
  floor.events.push({
    time: floor.now * MINUTE,
    what,
    job: -1,
    part: null,
    stage: null,
    phase: null,
    unit: null,
    persons: [person.name],
    pieces: 0,
  });
}
