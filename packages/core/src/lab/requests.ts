import { toMilliseconds } from '../kernel/clock.ts';
import { PHASE_ARRIVALS } from '../kernel/event-calendar.ts';
import { createStream, type Stream } from '../kernel/streams.ts';
import type { CompiledChange } from './compiled-lab.ts';
import { EVENT_CANCELLED, EVENT_REVISED } from './events.ts';
import type { Job } from './job.ts';
import type { Simulation } from './simulation.ts';

/** The draws of one demand stream for cancelling and revising. */
interface ChangeStreams {
  readonly cancels: Stream;
  readonly cancelsAfter: Stream;
  readonly revises: Stream;
  readonly revisesAfter: Stream;
}

/** What requesters do to jobs that they have asked for: they withdraw them, or send a changed file. */
export class Requests {
  private readonly simulation: Simulation;
  private streams: readonly (ChangeStreams | null)[] = [];

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  reset(): void {
    const { compiled, settings } = this.simulation;
    this.streams = compiled.streams.map(({ stream, cancels, revises }) => {
      if (cancels === null && revises === null) return null;
      const open = (purpose: string): Stream =>
        createStream(settings.seed, settings.replication, purpose, stream.name);
      return {
        cancels: open('cancels'),
        cancelsAfter: open('cancels after'),
        revises: open('revises'),
        revisesAfter: open('revises after'),
      };
    });
  }

  /** Draws, when a job arrives, whether and when its requester changes his or her mind. */
  draw(job: Job): void {
    const streams = this.streams[job.stream];
    if (streams === null) return;
    const { cancels, revises } = this.simulation.compiled.streams[job.stream];
    this.schedule(job, cancels, streams.cancels, streams.cancelsAfter, EVENT_CANCELLED);
    this.schedule(job, revises, streams.revises, streams.revisesAfter, EVENT_REVISED);
  }

  cancelled(id: number, stamp: number): void {
    const { jobs, flow, demand, compiled } = this.simulation;
    const job = jobs.at(id);
    if (job.stamp !== stamp) return;
    if (job.isStarted && compiled.streams[job.stream].cancels?.onlyBeforeStart) return;
    flow.giveUp(job);
    const { stream } = job;
    jobs.withdraw(job);
    demand.replace(stream);
  }

  revised(id: number, stamp: number): void {
    const { jobs, flow, demand, compiled, tracer, loads, outside } = this.simulation;
    const job = jobs.at(id);
    if (job.stamp !== stamp) return;
    if (job.isStarted && compiled.streams[job.stream].revises?.onlyBeforeStart) return;
    tracer?.job('job is revised', job);
    flow.giveUp(job);
    jobs.bookLost(job);
    job.revision++;
    demand.drawWorkAgain(job);
    if (job.isOutside) outside.sendAgain(job);
    else flow.enterStage(loads.begin(job, 0));
  }

  private schedule(
    job: Job,
    change: CompiledChange | null,
    chanceStream: Stream,
    afterStream: Stream,
    event: number,
  ): void {
    if (change === null) return;
    // Both are drawn whatever comes of the first, so that the streams stay in step.
    const happens = chanceStream() < change.chance;
    const after = toMilliseconds(change.after.sample(afterStream()));
    if (!happens) return;
    const { calendar, now } = this.simulation;
    calendar.schedule(now + after, PHASE_ARRIVALS, event, job.id, job.stamp);
  }
}
