import { WAIT_CAUSES } from '@buildweek/results';
import type { Job } from '../lab/job.ts';
import type { FollowedJob } from './history.ts';

/** Writes down what becomes of the first jobs, one by one; all others only count in sums. */
export class FollowedJobs {
  /** Of the followed jobs, those that are still to be done. */
  open: number;
  private readonly jobs: FollowedJob[];

  /** @param count jobs with numbers below this are followed */
  constructor(count: number) {
    this.open = count;
    this.jobs = Array.from({ length: count }, () => ({
      endedAt: Number.POSITIVE_INFINITY,
      isCancelled: false,
      work: new Float64Array(0),
      waits: new Float64Array(0),
    }));
  }

  ends(job: Job, now: number, isCancelled: boolean): void {
    if (job.number >= this.jobs.length) return;
    this.open--;
    const steps = job.part.steps.length;
    const perPiece = (times: Float64Array, length: number): Float64Array =>
      times.slice(0, length).map((time) => time / job.quantity);
    this.jobs[job.number] = {
      endedAt: now,
      isCancelled,
      work: perPiece(job.work, steps),
      waits: perPiece(job.waits, steps * WAIT_CAUSES.length),
    };
  }

  histories(): readonly FollowedJob[] {
    return this.jobs;
  }
}
