import { PHASE_ENDS } from '../kernel/event-calendar.ts';
import type { CompiledWork } from './compiled-lab.ts';
import { EVENT_TASK_ENDS } from './events.ts';
import type { Load } from './load.ts';
import { Pool } from './pool.ts';
import type { Simulation } from './simulation.ts';
import { Task } from './task.ts';
import type { Unit } from './unit.ts';

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
   * @param stepOffset step of the load's stage that the work is
   * @param duration drawn milliseconds
   * @param typical milliseconds that must fit before the end of a window when the work may not pause
   * @param kind rank of the kind of work
   * @param isSetUp whether a machine is got ready by it
   */
  create(
    work: CompiledWork,
    load: Load,
    unit: Unit | null,
    stepOffset: number,
    duration: number,
    typical: number,
    kind: number,
    isSetUp: boolean,
  ): Task {
    const task = this.tasks.take();
    task.work = work;
    task.load = load;
    task.unit = unit;
    task.stepOffset = stepOffset;
    task.remaining = duration;
    task.need = this.simulation.compiled.fitOnDrawn ? duration : typical;
    task.pausable = work.pausable;
    task.isSetUp = isSetUp;
    task.resumed = false;
    task.rush = load.rush;
    task.kind = kind;
    task.dueAt = load.dueAt;
    task.jobNumber = load.jobNumber;
    task.order = this.nextOrder();
    return task;
  }

  /** Lets a task wait for its people. */
  enqueue(task: Task): void {
    const queue = this.simulation.staff.queues[task.work.queue];
    task.readyAt = this.simulation.now;
    queue.clock.read(task.clockAtEntry, task.readyAt);
    queue.tasks.add(task);
    queue.isStale = true;
    if (task.isSetUp) queue.setUpsWaiting++;
  }

  /** First task of a queue that somebody can do now, with these persons in `staff.found`; null when none. */
  firstStartable(queueIndex: number): Task | null {
    const { staff } = this.simulation;
    for (let task = staff.queues[queueIndex].tasks.first; task !== null; task = task.after) {
      if (staff.find(queueIndex, task.pausable ? 0 : task.need)) return task;
    }
    return null;
  }

  /** Takes a task out of its queue and starts or resumes it with the persons that `firstStartable` saw. */
  startWaiting(task: Task): void {
    const { staff, flow, recorder, now } = this.simulation;
    staff.find(task.work.queue, task.pausable ? 0 : task.need);
    const queue = staff.queues[task.work.queue];
    queue.tasks.remove(task);
    queue.clock.advance(now);
    if (task.isSetUp) queue.setUpsWaiting--;
    let weight = 0;
    for (let load: Load | null = task.load; load !== null; load = load.nextInUnit) {
      flow.chargeWait(load, task.stepOffset, queue.clock.elapsed, task.clockAtEntry);
      weight += load.weight;
    }
    recorder.leavesAttendedQueue(task.work.queue, weight, task.readyAt, now);
    this.start(task);
  }

  /** Starts a task at once with the persons in `staff.found`. */
  start(task: Task): void {
    const { staff, calendar, now, tracer } = this.simulation;
    staff.occupy(task);
    task.startedAt = now;
    calendar.schedule(now + task.remaining, PHASE_ENDS, EVENT_TASK_ENDS, task.id, task.stamp);
    tracer?.task(task.resumed ? 'step resumes' : 'step starts', task);
    if (task.unit !== null) this.simulation.units.attendedPhaseStarts(task.unit);
  }

  /** Stops work at the end of a window; the remainder waits at its old rank. */
  pause(task: Task): void {
    const { now, tracer, units } = this.simulation;
    task.remaining -= now - task.startedAt;
    task.stamp++;
    task.resumed = true;
    task.pausable = true;
    tracer?.task('step pauses', task);
    this.bookWork(task);
    this.simulation.staff.release(task);
    if (task.unit !== null) units.attendedPhasePauses(task.unit);
    this.enqueue(task);
  }

  ends(id: number, stamp: number): void {
    const task = this.tasks.at(id);
    if (task.stamp !== stamp) return;
    const { staff, flow, units, tracer } = this.simulation;
    const { load, unit } = task;
    task.stamp++;
    tracer?.task('step ends', task);
    this.bookWork(task);
    staff.release(task);
    this.tasks.give(task);
    if (unit === null) flow.stageEnds(load);
    else units.phaseEnds(unit);
  }

  /** Books what waits or goes on when the replication ends. */
  finish(): void {
    const { staff, recorder, now } = this.simulation;
    for (const queue of staff.queues) {
      for (let task = queue.tasks.first; task !== null; task = task.after) {
        let weight = 0;
        for (let load: Load | null = task.load; load !== null; load = load.nextInUnit) weight += load.weight;
        recorder.leavesAttendedQueue(queue.compiled.index, weight, task.readyAt, now);
      }
    }
    for (const person of staff.persons) {
      // Work of several persons is booked once, with the first of them.
      if (person.task !== null && person.task.staff[0] === person.index) this.bookPeople(person.task);
    }
  }

  private bookWork(task: Task): void {
    const { flow, now } = this.simulation;
    for (let load: Load | null = task.load; load !== null; load = load.nextInUnit) {
      flow.chargeWork(load, task.stepOffset, now - task.startedAt);
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
