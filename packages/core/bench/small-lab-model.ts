import { HOURS_PER_WEEK, MILLISECONDS_PER_HOUR, toMilliseconds } from '../src/kernel/clock.ts';
import { Draws } from '../src/kernel/draws.ts';
import {
  EventCalendar,
  PHASE_ARRIVALS,
  PHASE_ENDS,
  PHASE_WINDOWS_BEGIN,
  PHASE_WINDOWS_END,
} from '../src/kernel/event-calendar.ts';
import { createSampler } from '../src/kernel/sampler.ts';
import { createStream } from '../src/kernel/streams.ts';
import { NumberRing } from './number-ring.ts';
import { collect, type WorkloadResult } from './workload.ts';

const ARRIVAL = 0;
const WORK_ENDS = 1;
const PRINT_ENDS = 2;
const SHIFT_ENDS = 3;
const SHIFT_BEGINS = 4;

const PERSONS = 2;
const MACHINES = 8;
/** Steps with hands, in the order of the route; the print lies between set-up and unloading. */
const STEPS = ['prepare', 'set up', 'unload', 'bench'] as const;
const SET_UP = STEPS.indexOf('set up');
const UNLOAD = STEPS.indexOf('unload');
const BENCH = STEPS.indexOf('bench');
/** Which step a free person takes first. */
const SERVED_IN_ORDER = [UNLOAD, SET_UP, STEPS.indexOf('prepare'), BENCH];

const DAY = 24 * MILLISECONDS_PER_HOUR;
const SHIFT_START = 8 * MILLISECONDS_PER_HOUR;
const SHIFT_LENGTH = 8 * MILLISECONDS_PER_HOUR;

/**
 * Workload C: a small lab on the bare kernel. Two technicians on weekdays from 08:00 to 16:00, eight machines
 * that print through the night; a job is prepared, waits for a machine, is set up, printed, unloaded and
 * finished by hand. Work with hands stops when the shift ends and queues again behind its like.
 */
class SmallLabModel {
  private readonly calendar = new EventCalendar();
  private readonly gap = createSampler({ kind: 'exponential', mean: HOURS_PER_WEEK / 100 });
  private readonly print = createSampler({ kind: 'lognormal', logMean: 1, logStandardDeviation: 0.5 });
  private readonly work = [
    createSampler({ kind: 'lognormal', logMean: -2, logStandardDeviation: 0.5 }),
    createSampler({ kind: 'uniform', low: 0.05, high: 0.15 }),
    createSampler({ kind: 'uniform', low: 0.03, high: 0.1 }),
    createSampler({ kind: 'exponential', mean: 0.3 }),
  ];
  private readonly queues = STEPS.map(() => new NumberRing());
  private readonly machineQueue = new NumberRing();
  private readonly freeJobs: number[] = [];
  private readonly arrivedAt: number[] = [];
  private readonly remaining: number[] = [];
  /** What each person is at: job and step, -1 for nothing. */
  private readonly jobOf = new Int32Array(PERSONS);
  private readonly stepOf = new Int32Array(PERSONS);
  private readonly endsAt = new Float64Array(PERSONS);
  private readonly stamps = new Int32Array(PERSONS);
  private workDraws: readonly Draws[] = [];
  private printDraws!: Draws;
  private isOpen = false;
  private machinesFree = MACHINES;
  private handsTime = 0;
  private leadTimes = 0;
  private finished = 0;

  /** Plays one replication of so many weeks, from an empty lab. */
  play(
    weeks: number,
    seed: string,
    replication: number,
  ): { events: number; answers: Record<string, number> } {
    const { calendar } = this;
    const gaps = new Draws(this.gap, createStream(seed, replication, 'arrivals', 'lab'));
    const end = toMilliseconds(weeks * HOURS_PER_WEEK);
    this.reset(seed, replication);
    calendar.schedule(toMilliseconds(gaps.next()), PHASE_ARRIVALS, ARRIVAL, 0, 0);
    calendar.schedule(SHIFT_START, PHASE_WINDOWS_BEGIN, SHIFT_BEGINS, 0, 0);
    let events = 0;
    while (calendar.take() && calendar.time < end) {
      const now = calendar.time;
      const { kind, subject } = calendar;
      if (kind === WORK_ENDS && calendar.stamp !== this.stamps[subject]) continue;
      events++;
      if (kind === ARRIVAL) {
        calendar.schedule(now + toMilliseconds(gaps.next()), PHASE_ARRIVALS, ARRIVAL, 0, 0);
        const job = this.freeJobs.pop() ?? this.arrivedAt.length;
        this.arrivedAt[job] = now;
        this.enqueue(0, job, now);
      } else if (kind === WORK_ENDS) {
        this.workEnds(subject, now);
      } else if (kind === PRINT_ENDS) {
        this.enqueue(UNLOAD, subject, now);
      } else if (kind === SHIFT_ENDS) {
        this.closeShift(now);
      } else {
        this.openShift(now);
      }
    }
    return {
      events,
      answers: {
        'mean lead time, h': this.leadTimes / this.finished / MILLISECONDS_PER_HOUR,
        'jobs finished a week': this.finished / weeks,
        'hours of hands a week': this.handsTime / weeks / MILLISECONDS_PER_HOUR,
      },
    };
  }

  private reset(seed: string, replication: number): void {
    this.calendar.clear();
    for (const queue of this.queues) queue.clear();
    this.machineQueue.clear();
    this.freeJobs.length = 0;
    this.arrivedAt.length = 0;
    this.remaining.length = 0;
    this.jobOf.fill(-1);
    this.workDraws = STEPS.map(
      (step, index) => new Draws(this.work[index], createStream(seed, replication, 'work', step)),
    );
    this.printDraws = new Draws(this.print, createStream(seed, replication, 'print', 'lab'));
    this.isOpen = false;
    this.machinesFree = MACHINES;
    this.handsTime = 0;
    this.leadTimes = 0;
    this.finished = 0;
  }

  private enqueue(step: number, job: number, now: number): void {
    this.remaining[job] = toMilliseconds(this.workDraws[step].next());
    this.queues[step].push(job);
    this.serve(now);
  }

  private serve(now: number): void {
    if (!this.isOpen) return;
    for (let person = 0; person < PERSONS; person++) {
      if (this.jobOf[person] >= 0) continue;
      for (const step of SERVED_IN_ORDER) {
        if (this.queues[step].length === 0) continue;
        const job = this.queues[step].shift();
        this.jobOf[person] = job;
        this.stepOf[person] = step;
        this.endsAt[person] = now + this.remaining[job];
        this.calendar.schedule(this.endsAt[person], PHASE_ENDS, WORK_ENDS, person, ++this.stamps[person]);
        this.handsTime += this.remaining[job];
        break;
      }
    }
  }

  private workEnds(person: number, now: number): void {
    const job = this.jobOf[person];
    const step = this.stepOf[person];
    this.jobOf[person] = -1;
    // Who is free goes to what waits already; then comes the next step of this job, then the machine.
    this.serve(now);
    if (step === SET_UP) {
      const duration = toMilliseconds(this.printDraws.next());
      this.calendar.schedule(now + duration, PHASE_ENDS, PRINT_ENDS, job, 0);
    } else if (step === BENCH) {
      this.leadTimes += now - this.arrivedAt[job];
      this.finished++;
      this.freeJobs.push(job);
    } else if (step === UNLOAD) {
      this.machinesFree++;
      this.enqueue(BENCH, job, now);
      this.startMachine(now);
    } else {
      this.machineQueue.push(job);
      this.startMachine(now);
    }
  }

  private startMachine(now: number): void {
    if (this.machinesFree === 0 || this.machineQueue.length === 0) return;
    this.machinesFree--;
    this.enqueue(SET_UP, this.machineQueue.shift(), now);
  }

  private openShift(now: number): void {
    this.isOpen = true;
    this.calendar.schedule(now + SHIFT_LENGTH, PHASE_WINDOWS_END, SHIFT_ENDS, 0, 0);
    this.serve(now);
  }

  private closeShift(now: number): void {
    this.isOpen = false;
    for (let person = 0; person < PERSONS; person++) {
      const job = this.jobOf[person];
      if (job < 0) continue;
      this.remaining[job] = this.endsAt[person] - now;
      this.handsTime -= this.remaining[job];
      this.stamps[person]++;
      this.jobOf[person] = -1;
      this.queues[this.stepOf[person]].push(job);
    }
    const isFriday = Math.floor(now / DAY) % 7 === 4;
    const next = now - SHIFT_LENGTH + (isFriday ? 3 : 1) * DAY;
    this.calendar.schedule(next, PHASE_WINDOWS_BEGIN, SHIFT_BEGINS, 0, 0);
  }
}

/** Many replications; the answers hold one value for each. */
export function playSmallLab(weeks: number, replications: number, seed: string): WorkloadResult {
  const model = new SmallLabModel();
  const answers: Record<string, number[]> = {};
  let events = 0;
  for (let replication = 0; replication < replications; replication++) {
    const run = model.play(weeks, seed, replication);
    events += run.events;
    collect(answers, run.answers);
  }
  return { events, answers };
}
