import { WAIT_CAUSES } from '@buildweek/results';

const CAUSES = WAIT_CAUSES.length;

export const CAUSE_REQUESTER = WAIT_CAUSES.indexOf('requester');
export const CAUSE_MACHINE_DOWN = WAIT_CAUSES.indexOf('machine down');
export const CAUSE_MACHINE = WAIT_CAUSES.indexOf('machine');
export const CAUSE_CARRIER = WAIT_CAUSES.indexOf('carrier');
export const CAUSE_BATCH = WAIT_CAUSES.indexOf('batch');
export const CAUSE_SHIFT = WAIT_CAUSES.indexOf('shift');
export const CAUSE_PERSON = WAIT_CAUSES.indexOf('person');
export const CAUSE_REST_OF_JOB = WAIT_CAUSES.indexOf('rest of the job');

/**
 * How long a queue has stood still for each cause. Everybody in a queue waits for the same cause at the same
 * time, so one clock serves all: a member notes the reading when it comes and takes the difference when it
 * goes, whatever happened in between.
 */
export class WaitClock {
  /** Milliseconds for each cause, up to `since`. */
  readonly elapsed = new Float64Array(CAUSES);
  private cause = CAUSE_MACHINE;
  private since = 0;

  reset(): void {
    this.elapsed.fill(0);
    this.cause = CAUSE_MACHINE;
    this.since = 0;
  }

  /** From `now` on the queue stands still for `cause`. */
  setCause(cause: number, now: number): void {
    if (cause === this.cause) return;
    this.advance(now);
    this.cause = cause;
  }

  /** Writes the reading at `now` into `reading`. */
  read(reading: Float64Array, now: number): void {
    this.advance(now);
    for (let cause = 0; cause < CAUSES; cause++) reading[cause] = this.elapsed[cause];
  }

  advance(now: number): void {
    this.elapsed[this.cause] += now - this.since;
    this.since = now;
  }
}
