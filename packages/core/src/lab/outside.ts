import { toMilliseconds } from '../kernel/clock.ts';
import { PHASE_ENDS } from '../kernel/event-calendar.ts';
import { createStream, type Stream } from '../kernel/streams.ts';
import type { CompiledSendOut } from './compiled-lab.ts';
import { EVENT_COMES_BACK } from './events.ts';
import type { Job } from './job.ts';
import { missesPromise, waitingJobs } from './outlook.ts';
import type { Simulation } from './simulation.ts';

/** Shares of jobs add up with rounding; less than this above a limit is not above it. */
const SHARE_TOLERANCE = 1e-9;

/** Work that is sent out: a job is judged when it arrives, leaves for its lead time, and is done when it is back. */
export class Outside {
  private readonly simulation: Simulation;
  private streams: readonly (Stream | null)[] = [];

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  reset(): void {
    const { compiled, settings } = this.simulation;
    this.streams = compiled.streams.map(({ stream, sentOut }) =>
      sentOut === null ? null : createStream(settings.seed, settings.replication, 'outside', stream.name),
    );
  }

  /**
   * Judges a job that arrives, before it enters any queue, and sends it out when a condition holds.
   *
   * @returns whether it was sent out
   */
  takes(job: Job): boolean {
    const { sentOut } = this.simulation.compiled.streams[job.stream];
    const stream = this.streams[job.stream];
    if (sentOut === null || stream === null) return false;
    // Drawn whatever is decided, so that the stream stays in step.
    const uniform = stream();
    if (!this.isSentOut(job, sentOut)) return false;
    job.isOutside = true;
    // It is ordered: whoever may change his or her mind only before the start comes too late.
    job.isStarted = true;
    this.simulation.recorder.jobIsSentOut(job);
    this.send(job, sentOut, uniform);
    return true;
  }

  /** A job that is outside is asked for anew: it is sent again, with a lead time of its own from now. */
  sendAgain(job: Job): void {
    const { compiled, settings } = this.simulation;
    const { stream, sentOut } = compiled.streams[job.stream];
    const owner = JSON.stringify([stream.name, job.numberInStream, job.revision]);
    const uniform = createStream(settings.seed, settings.replication, 'outside again', owner)();
    this.send(job, sentOut as CompiledSendOut, uniform);
  }

  comesBack(id: number, stamp: number): void {
    const { jobs, now, tracer } = this.simulation;
    const job = jobs.at(id);
    if (job.stamp !== stamp || job.backAt !== now) return;
    job.work[job.part.outsideStep] += job.quantity * (now - job.sentAt);
    tracer?.outside('step ends', job);
    jobs.end(job);
  }

  private isSentOut(job: Job, { rule, group }: CompiledSendOut): boolean {
    if (rule.always) return true;
    const { waitingJobsAbove } = rule;
    if (waitingJobsAbove !== null && group >= 0) {
      const waiting = waitingJobs(this.simulation.units.groups[group]);
      if (waiting > waitingJobsAbove + SHARE_TOLERANCE) return true;
    }
    return rule.promiseAtRisk && missesPromise(this.simulation, job, group);
  }

  private send(job: Job, { hours, days, cutOffHour }: CompiledSendOut, uniform: number): void {
    const { calendar, now, workingDays, tracer } = this.simulation;
    job.sentAt = now;
    if (hours !== null) job.backAt = now + toMilliseconds(hours.sample(uniform));
    else if (days !== null) {
      job.backAt = workingDays.dueAfter(now, {
        kind: 'working days',
        days: Math.max(1, Math.round(days.sample(uniform))),
        cutOffHour,
      });
    }
    tracer?.outside('step starts', job);
    calendar.schedule(job.backAt, PHASE_ENDS, EVENT_COMES_BACK, job.id, job.stamp);
  }
}
