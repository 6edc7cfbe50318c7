import { WAIT_CAUSES } from '@buildweek/results';
import type { Job } from '../lab/job.ts';
import type { FollowedJob } from './history.ts';

/** Writes down what becomes of the first jobs, one by one; all others only count in sums. */
export class FollowedJobs {
  /** Jobs whose end is waited for. */
  open: number;
  private readonly withSteps: boolean;
  private readonly awaited: number | null;
  private readonly jobs: FollowedJob[];

  /**
   * @param count jobs with numbers below this are followed
   * @param awaited the only one of them whose end is waited for; null: all of them
   * @param withSteps whether it is written down how long each step took
   */
  constructor(count: number, awaited: number | null, withSteps: boolean) {
    this.withSteps = withSteps;
    this.awaited = awaited;
    this.open = awaited === null ? count : 1;
    this.jobs = Array.from({ length: count }, () => ({
      endedAt: Number.POSITIVE_INFINITY,
      isCancelled: false,
    }));
  }

  ends(job: Job, now: number, isCancelled: boolean): void {
    if (job.number >= this.jobs.length) return;
    if (this.awaited === null || job.number === this.awaited) this.open--;
    const ended = { endedAt: now, isCancelled };
    this.jobs[job.number] = this.withSteps ? { ...ended, ...stepsOf(job) } : ended;
  }

  histories(): readonly FollowedJob[] {
    return this.jobs;
  }
}

function stepsOf({ part, quantity, work, waits }: Job): Pick<FollowedJob, 'work' | 'waits'> {
  const steps = part.steps.length;
  const perPiece = (times: Float64Array, length: number): Float64Array =>
    times.slice(0, length).map((time) => time / quantity);
  return { work: perPiece(work, steps), waits: perPiece(waits, steps * WAIT_CAUSES.length) };
}
