import { MILLISECONDS_PER_DAY, toHours, toMilliseconds } from '../kernel/clock.ts';
import { type CountSampler, createCountSampler } from '../kernel/count-sampler.ts';
import {
  PHASE_ENDS,
  PHASE_TIMERS,
  PHASE_WINDOWS_BEGIN,
  PHASE_WINDOWS_END,
} from '../kernel/event-calendar.ts';
import { createStream } from '../kernel/streams.ts';
import type { WorkingWindows } from '../kernel/working-windows.ts';
import { AttendedQueue } from './attended-queue.ts';
import {
  EVENT_GRACE_ENDS,
  EVENT_OTHER_DUTIES_DAY,
  EVENT_OTHER_DUTIES_DUE,
  EVENT_OTHER_DUTIES_END,
  EVENT_WINDOW_BEGINS,
  EVENT_WINDOW_ENDS,
} from './events.ts';
import {
  PERSON_IDLE,
  PERSON_OFF,
  PERSON_OTHER_DUTIES,
  PERSON_OVERTIME,
  PERSON_WORK,
  Person,
} from './person.ts';
import { isBefore } from './rank.ts';
import type { Simulation } from './simulation.ts';
import type { Task } from './task.ts';

/** The people: who is on duty, who is free, who can do what, who has other duties. */
export class Staff {
  readonly persons: readonly Person[];
  readonly queues: readonly AttendedQueue[];
  /** Positions of the persons that `find` found. */
  readonly found: Int32Array;
  private readonly simulation: Simulation;
  private windows: readonly WorkingWindows[] = [];
  /** For each people group: position of its present or next window, and the end of the present one. */
  private readonly windowIndex: Int32Array;
  private readonly windowEnd: Float64Array;
  /** For each people group: how long a spell of absence lasts. */
  private readonly absenceDays: readonly (CountSampler | null)[];
  private readonly groupMembers: readonly (readonly Person[])[];

  constructor(simulation: Simulation) {
    this.simulation = simulation;
    const { compiled } = simulation;
    this.persons = compiled.persons.map((person) => new Person(person));
    this.queues = compiled.attendedQueues.map((queue) => new AttendedQueue(queue));
    this.found = new Int32Array(compiled.mostPersons);
    this.windowIndex = new Int32Array(compiled.peopleGroups.length);
    this.windowEnd = new Float64Array(compiled.peopleGroups.length);
    this.absenceDays = compiled.peopleGroups.map((group) =>
      group.absence === null ? null : createCountSampler(group.absence.days),
    );
    this.groupMembers = compiled.peopleGroups.map((_, group) =>
      this.persons.filter((person) => person.group === group),
    );
  }

  /** @param windows of each people group */
  reset(windows: readonly WorkingWindows[]): void {
    const { settings, compiled } = this.simulation;
    this.windows = windows;
    for (const queue of this.queues) queue.reset();
    for (const person of this.persons) {
      person.reset();
      if (compiled.peopleGroups[person.group].otherDutiesShare > 0) {
        person.dutiesStream = createStream(settings.seed, settings.replication, 'other duties', person.name);
      }
      if (compiled.peopleGroups[person.group].absence !== null) {
        person.absenceStream = createStream(settings.seed, settings.replication, 'absence', person.name);
      }
    }
    this.windowIndex.fill(0);
    for (let group = 0; group < windows.length; group++) this.scheduleWindow(group);
  }

  /**
   * Looks for the persons that work of a queue needs: free, with the skill, and with enough time left.
   *
   * @param need milliseconds that must fit before the end of the window; 0 for work that may pause
   * @returns whether there are enough; `found` then holds them
   */
  find(queueIndex: number, need: number): boolean {
    const { candidates, persons: needed } = this.queues[queueIndex].compiled;
    if (this.queues[queueIndex].free < needed) return false;
    const latestStart = this.simulation.now + need;
    let count = 0;
    for (let position = 0; position < candidates.length; position++) {
      const person = this.persons[candidates[position]];
      if (person.isFree && this.windowEnd[person.group] >= latestStart) {
        this.found[count++] = person.index;
        if (count === needed) return true;
      }
    }
    return false;
  }

  /** Whether there are enough who could do this, free or at work that may pause for a rush job. */
  canInterrupt(queueIndex: number, need: number): boolean {
    const { candidates, persons: needed } = this.queues[queueIndex].compiled;
    const latestStart = this.simulation.now + need;
    let count = 0;
    for (const index of candidates) {
      const person = this.persons[index];
      if (!person.onDuty || this.windowEnd[person.group] < latestStart) continue;
      if (person.isFree || (person.task !== null && mayBeInterrupted(person.task))) count++;
    }
    return count >= needed;
  }

  /** Pauses the last-ranked work whose people could do something else that is rush, until they are enough. */
  interruptFor(queueIndex: number, need: number): void {
    while (!this.find(queueIndex, need)) {
      const task = this.interruptible(queueIndex, need);
      if (task === null) return;
      this.simulation.tasks.pause(task);
    }
  }

  /** Puts the persons in `found` to work on a task. */
  occupy(task: Task): void {
    for (let position = 0; position < task.work.persons; position++) {
      const person = this.persons[this.found[position]];
      task.staff[position] = person.index;
      this.leaveFree(person);
      person.task = task;
      this.setState(person, PERSON_WORK);
    }
  }

  /** Takes the persons off a task that has ended or paused. */
  release(task: Task): void {
    for (let position = 0; position < task.work.persons; position++) {
      const person = this.persons[task.staff[position]];
      person.task = null;
      person.graceStamp++;
      if (person.onDuty) this.becomeFree(person);
      else this.setState(person, PERSON_OFF);
    }
  }

  /** End of the present window of the group: when its people go. */
  windowBegins(group: number): void {
    const { starts, ends } = this.windows[group];
    const index = this.windowIndex[group];
    const end = ends[index];
    this.windowEnd[group] = end;
    this.simulation.calendar.schedule(end, PHASE_WINDOWS_END, EVENT_WINDOW_ENDS, group, 0);
    for (const person of this.groupMembers[group]) {
      if (this.isAway(person, this.simulation.now)) continue;
      person.onDuty = true;
      person.dutySince = this.simulation.now;
      person.graceStamp++;
      for (let position = 0; position < person.queues.length; position++) {
        this.queues[person.queues[position]].onDuty++;
      }
      this.drawDuties(person, starts[index], end);
      if (person.task === null) this.becomeFree(person);
      else this.setState(person, PERSON_WORK);
      this.simulation.tracer?.person('on duty', person);
    }
  }

  windowEnds(group: number): void {
    for (const person of this.groupMembers[group]) if (person.onDuty) this.goOffDuty(person);
    // Only now, so that nobody of the group is taken for free when a task of two of them pauses.
    for (const person of this.groupMembers[group]) this.leaveTask(person);
    this.windowIndex[group]++;
    this.scheduleWindow(group);
  }

  graceEnds(personIndex: number, stamp: number): void {
    const person = this.persons[personIndex];
    if (person.graceStamp === stamp && person.task !== null) this.simulation.tasks.pause(person.task);
  }

  /** A block of other duties falls due; who is busy takes it afterwards. */
  dutiesFallDue(personIndex: number): void {
    const person = this.persons[personIndex];
    if (!person.isFree || this.simulation.now < person.dutiesDueAt) return;
    this.leaveFree(person);
    this.becomeFree(person);
  }

  dutiesEnd(personIndex: number, stamp: number): void {
    const person = this.persons[personIndex];
    if (person.dutiesStamp !== stamp || person.dutiesSince < 0) return;
    this.stopDuties(person);
    this.becomeFree(person);
  }

  /** The next day of a window that is longer than a day. */
  dutiesDay(personIndex: number): void {
    const person = this.persons[personIndex];
    if (person.onDuty) this.drawDuties(person, this.simulation.now, this.windowEnd[person.group]);
  }

  /** Books what is still going on when the replication ends. */
  finish(): void {
    const { recorder, now } = this.simulation;
    for (const person of this.persons) {
      if (person.onDuty) recorder.onDuty(person.group, person.dutySince, now);
      this.setState(person, person.state);
    }
  }

  private interruptible(queueIndex: number, need: number): Task | null {
    const { candidates } = this.queues[queueIndex].compiled;
    const latestStart = this.simulation.now + need;
    let last: Task | null = null;
    for (const index of candidates) {
      const { task, onDuty, group } = this.persons[index];
      if (task === null || !onDuty || this.windowEnd[group] < latestStart) continue;
      if (mayBeInterrupted(task) && (last === null || isBefore(last, task))) last = task;
    }
    return last;
  }

  /** Whether a person is on leave, or absent by chance, in a window that starts now. */
  private isAway(person: Person, start: number): boolean {
    const group = this.simulation.compiled.peopleGroups[person.group];
    const local = this.simulation.localTime.toLocal(start);
    const hour = toHours(local);
    for (const leave of group.leave) {
      if (leave.person === person.numberInGroup && hour >= leave.fromHour && hour < leave.toHour) return true;
    }
    const { absenceStream } = person;
    if (group.absence === null || absenceStream === null) return false;
    const day = Math.floor(local / MILLISECONDS_PER_DAY);
    if (day > person.absenceDrawnFor) {
      person.absenceDrawnFor = day;
      // Both are drawn whatever comes of the first, so that the stream stays in step.
      const begins = absenceStream() < group.absence.chancePerDay;
      const days = (this.absenceDays[person.group] as CountSampler).sample(absenceStream());
      if (begins && day >= person.absentUntilDay) person.absentUntilDay = day + days;
    }
    return day < person.absentUntilDay;
  }

  private scheduleWindow(group: number): void {
    const { starts } = this.windows[group];
    const index = this.windowIndex[group];
    if (index >= starts.length) return;
    this.simulation.calendar.schedule(starts[index], PHASE_WINDOWS_BEGIN, EVENT_WINDOW_BEGINS, group, 0);
  }

  private goOffDuty(person: Person): void {
    if (person.isFree) this.leaveFree(person);
    person.onDuty = false;
    this.simulation.recorder.onDuty(person.group, person.dutySince, this.simulation.now);
    for (let position = 0; position < person.queues.length; position++) {
      this.queues[person.queues[position]].onDuty--;
      this.simulation.units.staffChanged(person.queues[position]);
    }
    if (person.dutiesSince >= 0) this.stopDuties(person);
    // What is not done lapses into the next window, where a new moment is drawn for it.
    person.dutiesDueAt = Number.POSITIVE_INFINITY;
    this.simulation.tracer?.person('off duty', person);
    if (person.task === null) this.setState(person, PERSON_OFF);
  }

  private leaveTask(person: Person): void {
    const { task } = person;
    if (task === null) return;
    const grace = toMilliseconds(this.simulation.compiled.peopleGroups[person.group].graceHours);
    if (task.pausable || grace === 0) {
      this.simulation.tasks.pause(task);
      return;
    }
    this.setState(person, PERSON_OVERTIME);
    person.graceStamp++;
    this.simulation.calendar.schedule(
      this.simulation.now + grace,
      PHASE_WINDOWS_END,
      EVENT_GRACE_ENDS,
      person.index,
      person.graceStamp,
    );
  }

  private drawDuties(person: Person, from: number, windowEnd: number): void {
    if (person.dutiesStream === null) return;
    const { calendar, compiled } = this.simulation;
    const length = Math.min(windowEnd - from, MILLISECONDS_PER_DAY);
    person.dutiesOwed += Math.round(compiled.peopleGroups[person.group].otherDutiesShare * length);
    person.dutiesDueAt = from + Math.floor(person.dutiesStream() * length);
    calendar.schedule(person.dutiesDueAt, PHASE_TIMERS, EVENT_OTHER_DUTIES_DUE, person.index, 0);
    if (windowEnd - from > MILLISECONDS_PER_DAY) {
      calendar.schedule(from + MILLISECONDS_PER_DAY, PHASE_TIMERS, EVENT_OTHER_DUTIES_DAY, person.index, 0);
    }
  }

  /** What a person does who has just nothing to do: other duties that are due, or wait for work. */
  private becomeFree(person: Person): void {
    const { now, calendar, units } = this.simulation;
    if (person.dutiesOwed > 0 && now >= person.dutiesDueAt) {
      person.dutiesSince = now;
      person.dutiesStamp++;
      this.setState(person, PERSON_OTHER_DUTIES);
      this.simulation.tracer?.person('other duties start', person);
      calendar.schedule(
        now + person.dutiesOwed,
        PHASE_ENDS,
        EVENT_OTHER_DUTIES_END,
        person.index,
        person.dutiesStamp,
      );
      return;
    }
    this.setState(person, PERSON_IDLE);
    for (let position = 0; position < person.queues.length; position++) {
      const queue = this.queues[person.queues[position]];
      queue.free++;
      queue.isStale = true;
      units.staffChanged(person.queues[position]);
    }
  }

  private leaveFree(person: Person): void {
    for (let position = 0; position < person.queues.length; position++) {
      this.queues[person.queues[position]].free--;
    }
  }

  private stopDuties(person: Person): void {
    person.dutiesOwed = Math.max(0, person.dutiesOwed - (this.simulation.now - person.dutiesSince));
    this.simulation.tracer?.person('other duties end', person);
    person.dutiesSince = -1;
    person.dutiesStamp++;
  }

  private setState(person: Person, state: number): void {
    const { now, recorder, tracer } = this.simulation;
    recorder.personState(person, now);
    tracer?.personState(person);
    person.state = state;
    person.stateSince = now;
  }
}

/** Whether rush may put it aside: normal work that may pause. */
function mayBeInterrupted(task: Task): boolean {
  return task.pausable && task.rush === 1;
}
