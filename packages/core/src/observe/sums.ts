import { WAIT_CAUSES } from '@buildweek/results';
import type { LocalTime } from '../kernel/local-time.ts';
import type { Job } from '../lab/job.ts';
import type { JobClassHistory } from './history.ts';
import { HoursOfWeek } from './hours-of-week.ts';
import { Sample } from './sample.ts';
import type { MeasuredWindow } from './window.ts';

/** Lead times and promises of one part type and priority. */
export class JobClassSums {
  private readonly part: string;
  private readonly rush: boolean;
  private readonly leadTimes = new Sample();
  private arrived = 0;
  private promised = 0;
  private onTime = 0;
  private cancelled = 0;
  private sentOut = 0;
  /** For each deadline of the lab. */
  private readonly endedBy: Float64Array;

  constructor(part: string, rush: boolean, deadlines: number) {
    this.part = part;
    this.rush = rush;
    this.endedBy = new Float64Array(deadlines);
  }

  arrives(job: Job): void {
    this.arrived++;
    if (job.dueAt < Number.POSITIVE_INFINITY) this.promised++;
  }

  ends(job: Job, now: number): void {
    this.leadTimes.add(now - job.arrivedAt);
    if (job.dueAt < Number.POSITIVE_INFINITY && now <= job.dueAt) this.onTime++;
  }

  isSentOut(): void {
    this.sentOut++;
  }

  endsBy(deadline: number): void {
    this.endedBy[deadline]++;
  }

  isWithdrawn(job: Job): void {
    this.cancelled++;
    if (job.isOutside) this.sentOut--;
    if (job.dueAt < Number.POSITIVE_INFINITY) this.promised--;
  }

  history(): JobClassHistory {
    return {
      part: this.part,
      rush: this.rush,
      arrived: this.arrived,
      unfinished: this.arrived - this.leadTimes.length - this.cancelled,
      cancelled: this.cancelled,
      sentOut: this.sentOut,
      promised: this.promised,
      onTime: this.onTime,
      leadTimes: this.leadTimes.sorted(),
      ...(this.endedBy.length > 0 ? { endedBy: this.endedBy } : {}),
    };
  }
}

/** Where the hours of the jobs of one part type went. */
export class PartHoursSums {
  finishedJobs = 0;
  repeatedPieces = 0;
  rebuiltPieces = 0;
  builtPieces = 0;
  madeJobs = 0;
  madePieces = 0;
  sentOutJobs = 0;
  sentOutPieces = 0;
  readonly waitsTooLong: Float64Array;
  readonly work: Float64Array;
  readonly waits: Float64Array;

  constructor(stages: number, steps: number) {
    this.waitsTooLong = new Float64Array(stages);
    this.work = new Float64Array(steps);
    this.waits = new Float64Array(steps * WAIT_CAUSES.length);
  }

  /** Counts the pieces of a job that is finished in the window, by where they were made. */
  countMade(job: Job): void {
    if (job.isOutside) {
      this.sentOutJobs++;
      this.sentOutPieces += job.quantity;
      return;
    }
    this.madeJobs++;
    this.madePieces += job.quantity;
  }

  add(job: Job): void {
    this.finishedJobs++;
    const { work, waits } = this;
    const { quantity } = job;
    for (let step = 0; step < work.length; step++) work[step] += job.work[step] / quantity;
    for (let entry = 0; entry < waits.length; entry++) {
      const wait = job.waits[entry];
      if (wait !== 0) waits[entry] += wait / quantity;
    }
  }
}

/** What the people of one group did. */
export class PeopleSums {
  readonly timeByLabel: Float64Array;
  readonly busyHours: HoursOfWeek;
  readonly dutyHours: HoursOfWeek;

  constructor(labels: number, window: MeasuredWindow, localTime: LocalTime) {
    this.timeByLabel = new Float64Array(labels);
    this.busyHours = new HoursOfWeek(window, localTime);
    this.dutyHours = new HoursOfWeek(window, localTime);
  }
}
