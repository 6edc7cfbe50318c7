import type { PartHoursHistory } from '@buildweek/core';
import type { PartType, Process, Step } from '@buildweek/model';
import { type PartHours, type StepHours, WAIT_CAUSES } from '@buildweek/results';
import { RunningRatios } from '@buildweek/statistics';
import { ratioEstimate } from './estimates.ts';
import { toHours } from './units.ts';

/** Where the hours of the jobs of one part type go: a ratio of hours to finished jobs, step by step. */
export class PartHoursSums {
  private readonly part: PartType;
  private readonly process: Process | null;
  private readonly steps: readonly Step[];
  private readonly work: RunningRatios;
  private readonly waits: RunningRatios;

  constructor(first: PartHoursHistory, part: PartType, process: Process | null) {
    this.part = part;
    this.process = process;
    this.steps = first.steps;
    this.work = new RunningRatios(first.work.length);
    this.waits = new RunningRatios(first.waits.length);
  }

  add(hours: PartHoursHistory): void {
    this.work.add(toHours(hours.work), hours.finishedJobs);
    this.waits.add(toHours(hours.waits), hours.finishedJobs);
  }

  /** @returns null when no job of this part was finished */
  results(level: number): PartHours | null {
    if (!this.work.hasDenominator) return null;
    return {
      part: this.part.name,
      route: this.part.route,
      process: this.process,
      steps: this.steps.flatMap((step, index) => {
        // Every part type could be sent out; it is a step of those that were.
        if (step.phase === 'outside' && this.work.meanOfNumerator(index) === 0) return [];
        return [this.step(step, index, level)];
      }),
    };
  }

  private step(step: Step, index: number, level: number): StepHours {
    return {
      stage: step.stage,
      phase: step.phase,
      attended: step.attended,
      work: ratioEstimate(this.work, index, level),
      waits: WAIT_CAUSES.flatMap((cause, position) => {
        const entry = index * WAIT_CAUSES.length + position;
        if (this.waits.meanOfNumerator(entry) === 0) return [];
        return [{ cause, hours: ratioEstimate(this.waits, entry, level) }];
      }),
    };
  }
}
