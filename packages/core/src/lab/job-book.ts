import { CAUSE_REQUESTER } from '../observe/wait-clock.ts';
import type { CompiledStream } from './compiled-lab.ts';
import { Job } from './job.ts';
import { Pool } from './pool.ts';
import type { Simulation } from './simulation.ts';

/** The jobs in the lab, from their arrival until their last good part is done. */
export class JobBook {
  /** First of the jobs in the lab, in no particular order. */
  first: Job | null = null;
  inLab = 0;
  /** Jobs of the cohort that are not finished. */
  cohortOpen = 0;
  private readonly simulation: Simulation;
  private readonly pool: Pool<Job>;
  private nextNumber = 0;
  private readonly numbersInStreams: Int32Array;

  constructor(simulation: Simulation) {
    const { mostStages, mostSteps } = simulation.compiled;
    this.simulation = simulation;
    this.numbersInStreams = new Int32Array(simulation.compiled.streams.length);
    this.pool = new Pool((id) => new Job(id, mostStages, mostSteps));
  }

  reset(): void {
    this.pool.reset();
    this.first = null;
    this.inLab = 0;
    this.cohortOpen = 0;
    this.nextNumber = 0;
    this.numbersInStreams.fill(0);
  }

  /**
   * Enters a job; it has no work yet and stands nowhere.
   *
   * @param arrivedAt now, or earlier for a job that is there at the start
   */
  enter(stream: CompiledStream, quantity: number, rush: boolean, arrivedAt: number, dueAt: number): Job {
    const { recorder } = this.simulation;
    const job = this.pool.take();
    job.number = this.nextNumber++;
    job.stream = stream.index;
    job.part = stream.part;
    job.quantity = quantity;
    job.rush = rush;
    job.arrivedAt = arrivedAt;
    job.dueAt = dueAt;
    job.lots = null;
    job.isStarted = false;
    job.isOutside = false;
    job.revision = 0;
    job.numberInStream = this.numbersInStreams[stream.index]++;
    job.inCohort = recorder.isMeasured(arrivedAt);
    job.work.fill(0);
    job.waits.fill(0);
    job.before = null;
    job.after = this.first;
    if (this.first !== null) this.first.before = job;
    this.first = job;
    recorder.jobsInLabChange(this.inLab, this.simulation.now);
    this.inLab++;
    if (job.inCohort) this.cohortOpen++;
    recorder.jobArrives(job);
    this.simulation.tracer?.arrives(job);
    return job;
  }

  /** The last good part of a job is done. */
  end(job: Job): void {
    const { recorder, now, loads } = this.simulation;
    this.countOut(job);
    recorder.jobEnds(job, now);
    this.simulation.followed?.ends(job, now, false);
    this.simulation.tracer?.job('job ends', job);
    const { stream } = job;
    loads.dropLots(job);
    this.leave(job);
    this.simulation.demand.replace(stream);
  }

  /** A job is withdrawn by its requester; its lots are gone already. */
  withdraw(job: Job): void {
    const { recorder, now } = this.simulation;
    this.countOut(job);
    recorder.jobIsWithdrawn(job, now);
    this.simulation.followed?.ends(job, now, true);
    this.simulation.tracer?.job('job is cancelled', job);
    this.leave(job);
  }

  /** What was going on when a changed file came is lost time that the requester caused; it is booked on the first step. */
  bookLost(job: Job): void {
    const { recorder, now } = this.simulation;
    job.waits[CAUSE_REQUESTER] += job.quantity * recorder.bookableTime(job, now) - recorder.bookedTime(job);
  }

  at(id: number): Job {
    return this.pool.at(id);
  }

  /** Books the stays of those who are still there when the replication ends. */
  finish(): void {
    const { recorder, now } = this.simulation;
    recorder.jobsInLabChange(this.inLab, now);
    for (let job = this.first; job !== null; job = job.after) recorder.jobStays(job, now);
  }

  private countOut(job: Job): void {
    const { recorder, now } = this.simulation;
    recorder.jobsInLabChange(this.inLab, now);
    this.inLab--;
    if (job.inCohort) this.cohortOpen--;
  }

  private leave(job: Job): void {
    job.stamp++;
    if (job.before === null) this.first = job.after;
    else job.before.after = job.after;
    if (job.after !== null) job.after.before = job.before;
    this.pool.give(job);
  }
}
