import { WAIT_CAUSES } from '@buildweek/results';
import { CAUSE_REST_OF_JOB } from '../observe/wait-clock.ts';
import type { Load, Lot } from './load.ts';
import type { Simulation } from './simulation.ts';

const CAUSES = WAIT_CAUSES.length;

/** The hours of jobs: work and waits are booked by pieces, on the step of the route that goes on or is waited for. */
export class Bookings {
  private readonly simulation: Simulation;

  constructor(simulation: Simulation) {
    this.simulation = simulation;
  }

  /** Adds a period of work to each job in a load, by pieces. */
  chargeWork(load: Load, stepOffset: number, duration: number): void {
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
      if (lot.isDead) continue;
      lot.job.work[lot.definition.firstStep + stepOffset] += lot.pieces * duration;
    }
  }

  /** Adds a period of waiting, as the difference of two clock readings, to each job in a load, by pieces. */
  chargeWait(load: Load, stepOffset: number, until: Float64Array, from: Float64Array): void {
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
      if (lot.isDead) continue;
      const step = lot.definition.firstStep + stepOffset;
      for (let cause = 0; cause < CAUSES; cause++) {
        const duration = until[cause] - from[cause];
        if (duration !== 0) this.bookWait(lot, step, cause, duration);
      }
    }
  }

  /** Adds a period of waiting for one cause to each job in a load, by pieces. */
  chargeCause(load: Load, stepOffset: number, cause: number, duration: number): void {
    if (duration === 0) return;
    for (let lot = load.lots; lot !== null; lot = lot.nextInLoad) {
      if (!lot.isDead) this.bookWait(lot, lot.definition.firstStep + stepOffset, cause, duration);
    }
  }

  /** Waiting for the rest of the job counts for the step that comes next; behind the last, for that. */
  chargeParked(lot: Lot, duration: number): void {
    const { stages } = lot.job.part;
    const last = stages[stages.length - 1];
    const step =
      lot.stage < stages.length ? stages[lot.stage].firstStep : last.firstStep + last.stepCount - 1;
    this.bookWait(lot, step, CAUSE_REST_OF_JOB, duration);
  }

  private bookWait(lot: Lot, step: number, cause: number, duration: number): void {
    lot.job.waits[step * CAUSES + cause] += lot.pieces * duration;
    this.simulation.tracer?.waited(lot, step, cause, duration);
  }
}
