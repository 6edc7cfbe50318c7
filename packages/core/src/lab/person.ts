import { PERSON_STATES } from '@buildweek/results';
import type { Stream } from '../kernel/streams.ts';
import type { CompiledPerson } from './compiled-lab.ts';
import type { Task } from './task.ts';

export const PERSON_OFF = PERSON_STATES.indexOf('off');
export const PERSON_IDLE = PERSON_STATES.indexOf('idle');
export const PERSON_WORK = PERSON_STATES.indexOf('work');
export const PERSON_OTHER_DUTIES = PERSON_STATES.indexOf('other duties');
export const PERSON_OVERTIME = PERSON_STATES.indexOf('overtime');

/** An individual of a people group. */
export class Person {
  readonly index: number;
  readonly group: number;
  readonly name: string;
  readonly queues: Int32Array;
  onDuty = false;
  task: Task | null = null;
  state = PERSON_OFF;
  stateSince = 0;
  readonly timeInState = new Float64Array(PERSON_STATES.length);
  /** Other duties: milliseconds still owed, from when on they are due, and since when they go on. */
  dutiesOwed = 0;
  dutiesDueAt = Number.POSITIVE_INFINITY;
  dutiesSince = -1;
  dutiesStream: Stream | null = null;
  /** Number within the group, from 1. */
  readonly numberInGroup: number;
  /** Since when the person is on duty. */
  dutySince = 0;
  /** Absence by chance: the last day for which it was drawn, and the first day on which the person is back. */
  absenceDrawnFor = -1;
  absentUntilDay = 0;
  absenceStream: Stream | null = null;
  /** Changes whenever a scheduled event about other duties, or about the grace, is void. */
  dutiesStamp = 0;
  graceStamp = 0;

  constructor(compiled: CompiledPerson) {
    this.index = compiled.index;
    this.group = compiled.group;
    this.name = compiled.name;
    this.queues = compiled.queues;
    this.numberInGroup = compiled.numberInGroup;
  }

  reset(): void {
    this.onDuty = false;
    this.task = null;
    this.state = PERSON_OFF;
    this.stateSince = 0;
    this.timeInState.fill(0);
    this.dutiesOwed = 0;
    this.dutiesDueAt = Number.POSITIVE_INFINITY;
    this.dutiesSince = -1;
    this.dutiesStream = null;
    this.absenceDrawnFor = -1;
    this.absentUntilDay = 0;
    this.absenceStream = null;
  }

  /** Whether the person is on duty and has nothing to do. */
  get isFree(): boolean {
    return this.onDuty && this.task === null && this.dutiesSince < 0;
  }
}
