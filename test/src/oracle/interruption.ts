import type { Floor, Person, Task } from './floor.ts';
import { count } from './floor.ts';
import { compareServed, rankOfTask } from './rank.ts';
import { mayBeInterrupted } from './rules.ts';
import { findWorkers, isAble, pause } from './tasks.ts';
import type { Hands } from './unit.ts';

/**
 * Those who do a rush job, after what they were at has been put aside: the last-ranked work first, and no more
 * than is needed. Null when that would not be enough, and then nothing is put aside.
 */
export function interruptFor(floor: Floor, hands: Hands, fit: number | null): Person[] | null {
  const couldHelp = (person: Person): boolean => isAble(floor, person, hands, fit);
  const interruptible = floor.tasks.filter(
    (task) => mayBeInterrupted(floor, task, rankOfTask(task)) && task.workers.some(couldHelp),
  );
  const free = floor.people.filter((person) => person.task === null && couldHelp(person));
  const busy = interruptible.flatMap((task) => task.workers.filter(couldHelp));
  if (free.length + busy.length < hands.persons) return null;
  interruptible.sort((one, other) => compareTasks(floor, other, one));
  for (const [position, task] of interruptible.entries()) {
    const workers = findWorkers(floor, hands, fit);
    if (workers !== null) return workers;
    const next = interruptible[position + 1];
    if (next !== undefined && compareTasks(floor, task, next) === 0) floor.undecidedAt ??= floor.now;
    count(floor, 'rush interrupts');
    pause(floor, task);
  }
  return findWorkers(floor, hands, fit);
}

function compareTasks(floor: Floor, one: Task, other: Task): number {
  return compareServed(
    floor,
    { rank: rankOfTask(one), kind: one.kind },
    { rank: rankOfTask(other), kind: other.kind },
  );
}
