import { CAUSE_PERSON, CAUSE_SHIFT, WaitClock } from '../observe/wait-clock.ts';
import type { CompiledAttendedQueue } from './compiled-lab.ts';
import { RankedList } from './ranked-list.ts';
import type { Task } from './task.ts';

/** Attended work that waits for persons with one skill, and how many of them are there. */
export class AttendedQueue {
  readonly compiled: CompiledAttendedQueue;
  readonly tasks = new RankedList<Task>();
  readonly clock = new WaitClock();
  /** Qualified persons on duty, and those of them who have nothing to do. */
  onDuty = 0;
  free = 0;
  /** Whether something changed since dispatch last found nothing to start here. */
  isStale = false;
  /** The cause when the last instant ended. */
  settledCause = CAUSE_SHIFT;
  /** Tasks that set a machine up or prepare its build, for the last call. */
  setUpsWaiting = 0;
  /** Whether the lab has too few people with the skill at any time. */
  private readonly isUnmanned: boolean;

  constructor(compiled: CompiledAttendedQueue) {
    this.compiled = compiled;
    this.isUnmanned = compiled.candidates.length < compiled.persons;
  }

  reset(): void {
    this.tasks.clear();
    this.clock.reset();
    this.onDuty = 0;
    this.free = 0;
    this.isStale = false;
    this.settledCause = CAUSE_SHIFT;
    this.setUpsWaiting = 0;
  }

  /** Why work that needs these people does not go on. Who is free and yet does not start has too little time left. */
  get cause(): number {
    const { persons } = this.compiled;
    // No shift brings whom the lab does not have.
    if (this.isUnmanned) return CAUSE_PERSON;
    return this.onDuty < persons || this.free >= persons ? CAUSE_SHIFT : CAUSE_PERSON;
  }
}
