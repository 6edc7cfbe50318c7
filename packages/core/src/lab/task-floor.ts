import { PHASE_ENDS } from '../kernel/event-calendar.ts';
import type { CompiledWork } from './compiled-lab.ts';
import { EVENT_TASK_ENDS } from './events.ts';
import type { Load } from './load.ts';
import { Pool } from './pool.ts';
import type { Simulation } from './simulation.ts';
import { TASK_BENCH, TASK_CHORE, TASK_CLEANING, TASK_PHASE, TASK_REPAIR, Task } from './task.ts';
import type { Unit } from './unit.ts';
import type { UpkeepItem } from './upkeep-item.ts';

/** Attended work in progress and waiting: how a task starts, pauses, is resumed and ends. */
export class TaskFloor {
  private readonly simulation: Simulation;
  private readonly tasks: Pool<Task>;
  private order = 0;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
    this.tasks = new Pool((id) => new Task(id, simulation.compiled.mostPersons));
  }

  reset(): void {
    this.tasks.reset();
    this.order = 0;
  }

  /** Numbers whatever becomes ready, tasks and loads alike: the last word where ranks are equal in all else. */
  nextOrder(): number {
    return this.order++;
  }

  /**
   * Work on a load, at a bench or as a phase of a unit.
   *
   * @param stepOffset step of the load's stage that the work is
   * @param duration drawn milliseconds
   * @param typical milliseconds that must fit before the end of a window when the work may not pause
   * @param kind rank of the kind of work
   */
  create(
    work: CompiledWork,
    load: Load,
    unit: Unit | null,
    stepOffset: number,
    duration: number,
    typical: number,
    kind: number,
  ): Task {
    const task = this.take(work, unit, duration, typical, unit === null ? TASK_BENCH : TASK_PHASE);
    task.load = load;
    task.stepOffset = stepOffset;
    task.rush = load.rush;
    task.kind = kind;
    task.dueAt = load.dueAt;
    task.jobNumber = load.jobNumber;
    return task;
  }

  /** A repair, which goes before rush, or a chore, which ranks with the work at its unit, the longest due first. */
  createUpkeep(work: CompiledWork, item: UpkeepItem, duration: number, purpose: number): Task {
    const task = this.take(work, item.unit, duration, work.typical, purpose);
    const isRepair = purpose === TASK_REPAIR;
    task.upkeep = item;
    task.rush = isRepair ? -1 : 1;
    task.kind = this.simulation.compiled.unitGroups[item.unit.group].kindRank;
    task.dueAt = isRepair ? this.simulation.now : item.dueSince;
    task.jobNumber = this.numberOf(item.unit);
    return task;
  }

  /** Cleaning up after a failed build; it frees the machine, so it ranks with the machines. */
  createCleaning(work: CompiledWork, unit: Unit, duration: number): Task {
    const task = this.take(work, unit, duration, work.typical, TASK_CLEANING);
    task.rush = 1;
    task.kind = this.simulation.compiled.kindRanks.machine;
    task.dueAt = this.simulation.now;
    task.jobNumber = this.numberOf(unit);
    return task;
  }

  /** In place of a job number: of what is equal in all else, work at the lower unit comes first, and before jobs. */
  private numberOf(unit: Unit): number {
    return unit.index - this.simulation.compiled.units.length;
  }

  private take(
    work: CompiledWork,
    unit: Unit | null,
    duration: number,
    typical: number,
    purpose: number,
  ): Task {
    const task = this.tasks.take();
    task.work = work;
    task.purpose = purpose;
    task.load = null;
    task.unit = unit;
    task.upkeep = null;
    task.stepOffset = 0;
    task.remaining = duration;
    task.need = this.simulation.compiled.fitOnDrawn ? duration : typical;
    task.pausable = work.pausable;
    task.isSetUp = false;
    task.resumed = false;
    task.isWaiting = false;
    task.order = this.nextOrder();
    if (unit !== null) unit.task = task;
    return task;
  }

  /** Lets a task wait for its people. */
  enqueue(task: Task): void {
    const queue = this.simulation.staff.queues[task.work.queue];
    task.readyAt = this.simulation.now;
    task.isWaiting = true;
    queue.clock.read(task.clockAtEntry, task.readyAt);
    queue.tasks.add(task);
    queue.isStale = true;
    if (!task.isSetUp) return;
    queue.setUpsWaiting++;
    this.simulation.units.staffChanged(task.work.queue);
  }

  /** First task of a queue that somebody can do now, with these persons in `staff.found`; null when none. */
  firstStartable(queueIndex: number): Task | null {
    const { staff, compiled } = this.simulation;
    const queue = staff.queues[queueIndex];
    if (queue.free < queue.compiled.persons && !compiled.rushInterrupts) return null;
    for (let task = queue.tasks.first; task !== null; task = task.after) {
      const need = task.pausable ? 0 : task.need;
      if (staff.find(queueIndex, need)) return task;
      if (compiled.rushInterrupts && task.rush === 0 && staff.canInterrupt(queueIndex, need)) return task;
    }
    return null;
  }

  /** Takes a task out of its queue and starts or resumes it with the persons that `firstStartable` saw. */
  startWaiting(task: Task): void {
    const { staff } = this.simulation;
    const need = task.pausable ? 0 : task.need;
    if (!staff.find(task.work.queue, need)) {
      // Only a rush task comes here, and only with somebody to interrupt; whoever is freed may have other duties.
      staff.interruptFor(task.work.queue, need);
      if (!staff.find(task.work.queue, need)) return;
    }
    this.leaveQueue(task);
    this.start(task);
  }

  /** Starts a task at once with the persons in `staff.found`. */
  start(task: Task): void {
    const { staff, calendar, now, tracer, flow } = this.simulation;
    staff.occupy(task);
    task.startedAt = now;
    calendar.schedule(now + task.remaining, PHASE_ENDS, EVENT_TASK_ENDS, task.id, task.stamp);
    tracer?.task(task.resumed ? 'step resumes' : 'step starts', task);
    for (let load = task.load; load !== null; load = load.nextInUnit) flow.markStarted(load);
    if (task.unit !== null) this.simulation.runs.attendedWorkStarts(task.unit, task.purpose, task.remaining);
  }

  /** Stops work at the end of a window, or for a rush job; the remainder waits at its old rank. */
  pause(task: Task): void {
    const { runs } = this.simulation;
    this.stop(task, 'step pauses');
    task.resumed = true;
    task.pausable = true;
    if (task.unit !== null) runs.attendedWorkPauses(task.unit, task.purpose);
    this.enqueue(task);
  }

  /** Ends a task before its time: what waited or went on is booked, its people are free. */
  abandon(task: Task): void {
    if (task.isWaiting) this.leaveQueue(task);
    else this.stop(task, 'step is broken off');
    this.giveBack(task);
  }

  ends(id: number, stamp: number): void {
    const task = this.tasks.at(id);
    if (task.stamp !== stamp) return;
    const { staff, flow, runs, upkeep, tracer } = this.simulation;
    const { load, unit, purpose } = task;
    task.stamp++;
    tracer?.task('step ends', task);
    this.bookWork(task);
    staff.release(task);
    if (purpose === TASK_REPAIR || purpose === TASK_CHORE) {
      if (unit !== null) unit.task = null;
      upkeep.taskEnds(task);
      this.tasks.give(task);
      return;
    }
    this.giveBack(task);
    if (unit === null) flow.stageEnds(load as Load);
    else if (purpose === TASK_CLEANING) runs.cleaningEnds(unit);
    else runs.attendedPhaseEnds(unit);
  }

  /** Books what waits or goes on when the replication ends. */
  finish(): void {
    const { staff, recorder, now } = this.simulation;
    for (const queue of staff.queues) {
      for (let task = queue.tasks.first; task !== null; task = task.after) {
        recorder.leavesAttendedQueue(queue.compiled.index, weightOf(task), task.readyAt, now);
      }
    }
    for (const person of staff.persons) {
      // Work of several persons is booked once, with the first of them.
      if (person.task !== null && person.task.staff[0] === person.index) this.bookPeople(person.task);
    }
  }

  private giveBack(task: Task): void {
    if (task.unit !== null) task.unit.task = null;
    task.stamp++;
    this.tasks.give(task);
  }

  private leaveQueue(task: Task): void {
    const { staff, flow, recorder, now, bookings } = this.simulation;
    const queue = staff.queues[task.work.queue];
    queue.tasks.remove(task);
    task.isWaiting = false;
    queue.clock.advance(now);
    if (task.isSetUp) queue.setUpsWaiting--;
    for (let load = task.load; load !== null; load = load.nextInUnit) {
      bookings.chargeWait(load, task.stepOffset, queue.clock.elapsed, task.clockAtEntry);
      if (task.purpose === TASK_BENCH && !task.resumed) flow.checkMaximumWait(load);
    }
    recorder.leavesAttendedQueue(task.work.queue, weightOf(task), task.readyAt, now);
  }

  private stop(task: Task, what: 'step pauses' | 'step is broken off'): void {
    const { now, tracer, staff } = this.simulation;
    task.remaining -= now - task.startedAt;
    task.stamp++;
    tracer?.task(what, task);
    this.bookWork(task);
    staff.release(task);
  }

  private bookWork(task: Task): void {
    const { now, bookings } = this.simulation;
    for (let load = task.load; load !== null; load = load.nextInUnit) {
      bookings.chargeWork(load, task.stepOffset, now - task.startedAt);
    }
    this.bookPeople(task);
  }

  private bookPeople(task: Task): void {
    const { recorder, staff, now } = this.simulation;
    for (let position = 0; position < task.work.persons; position++) {
      recorder.personWork(staff.persons[task.staff[position]].group, task.work.label, task.startedAt, now);
    }
  }
}

/** Jobs that a task stands for in a queue. */
function weightOf(task: Task): number {
  let weight = 0;
  for (let load = task.load; load !== null; load = load.nextInUnit) weight += load.weight;
  return weight;
}
