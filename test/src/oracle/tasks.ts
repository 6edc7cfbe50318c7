import type { WorkKind } from '@buildweek/model';
import { noteTask } from './events.ts';
import type { Floor, Load, Person, Task, Upkeep } from './floor.ts';
import { isOnDuty, remove } from './floor.ts';
import type { Length } from './minutes.ts';
import { minutes } from './minutes.ts';
import { kindOfUpkeep } from './rules.ts';
import type { Hands, PlannedPhase, Run } from './unit.ts';

/** Steps begin, pause and end here; what comes after them is decided elsewhere. */

/** A step that becomes ready. What needs no hands begins at once; the rest waits for them. */
export function makeReady(
  floor: Floor,
  planned: PlannedPhase,
  loads: readonly Load[],
  run: Run | null,
  kind: WorkKind,
): Task {
  const { phase, length, hands } = planned;
  return add(floor, { phase, loads, run, upkeep: null, kind, hands }, length);
}

/** A repair or chore that needs hands. */
export function makeUpkeepReady(floor: Floor, upkeep: Upkeep, hands: Hands | null, length: Length): Task {
  return add(floor, { phase: null, loads: [], run: null, upkeep, kind: kindOfUpkeep(upkeep), hands }, length);
}

function add(
  floor: Floor,
  about: Pick<Task, 'phase' | 'loads' | 'run' | 'upkeep' | 'kind' | 'hands'>,
  length: Length,
): Task {
  const { lab } = floor;
  const { hands } = about;
  const task: Task = {
    ...about,
    remaining: length.actual,
    fit:
      hands === null || hands.mayPause ? null : length[lab.dispatch.fitOn === 'drawn' ? 'actual' : 'typical'],
    mayPause: hands?.mayPause ?? false,
    hasBegun: false,
    workers: [],
    endsAt: null,
    readyAt: floor.now,
    readyOrder: floor.order++,
    startOrder: 0,
  };
  floor.tasks.push(task);
  if (hands === null) begin(floor, task, []);
  return task;
}

export function begin(floor: Floor, task: Task, workers: Person[]): void {
  task.workers = workers;
  for (const person of workers) person.task = task;
  task.endsAt = floor.now + task.remaining;
  task.startOrder = floor.order++;
  noteTask(floor, task.hasBegun ? 'step resumes' : 'step starts', task);
  task.hasBegun = true;
}

/** The remainder goes back to the queue and may be done bit by bit from now on. */
export function pause(floor: Floor, task: Task): void {
  if (task.endsAt === null) throw new Error('What does not go on cannot pause.');
  noteTask(floor, 'step pauses', task);
  task.remaining = task.endsAt - floor.now;
  task.endsAt = null;
  task.mayPause = true;
  task.fit = null;
  letGo(task);
}

export function end(floor: Floor, task: Task): void {
  noteTask(floor, 'step ends', task);
  letGo(task);
  remove(floor.tasks, task);
}

/** Ends a step before its time. */
export function breakOff(floor: Floor, task: Task): void {
  if (task.endsAt !== null) noteTask(floor, 'step is broken off', task);
  letGo(task);
  remove(floor.tasks, task);
}

function letGo(task: Task): void {
  for (const person of task.workers) {
    person.task = null;
    person.overtimeUntil = null;
  }
  task.workers = [];
}

/**
 * Those who would do the work if it began now: free, on duty, with the skill and, if it has to fit, with
 * enough time left; the fewest skills first, then the lowest number. Null when there are not enough.
 */
export function findWorkers(floor: Floor, hands: Hands, fit: number | null): Person[] | null {
  const able = floor.people.filter((person) => person.task === null && isAble(floor, person, hands, fit));
  able.sort((one, other) => one.group.skills.length - other.group.skills.length || one.number - other.number);
  return able.length < hands.persons ? null : able.slice(0, hands.persons);
}

/** Whether somebody who has nothing else to do could do the work, beginning now. */
export function isAble(floor: Floor, person: Person, hands: Hands, fit: number | null): boolean {
  if (!isOnDuty(person, floor.now) || !person.group.skills.includes(hands.skill)) return false;
  return fit === null || windowEnd(person, floor.now) - floor.now >= fit;
}

/**
 * What a change of the calendar does to the work of a person. At the end of the window work that may pause
 * does so; other work goes on as overtime while the grace lasts. When the next window begins meanwhile, the
 * overtime is ordinary work again.
 */
export function followCalendar(floor: Floor, person: Person): void {
  const { task } = person;
  if (task === null) return;
  if (isOnDuty(person, floor.now)) {
    person.overtimeUntil = null;
    return;
  }
  if (person.overtimeUntil === null) {
    const grace = task.mayPause ? 0 : minutes(person.group.graceHours);
    person.overtimeUntil = floor.now + grace;
  }
  if (floor.now >= person.overtimeUntil) pause(floor, task);
}

function windowEnd(person: Person, minute: number): number {
  return person.windowEnds[minute] ?? 0;
}
