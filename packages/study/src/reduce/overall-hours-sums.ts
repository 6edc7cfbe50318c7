import { MILLISECONDS_PER_HOUR, type PartHoursHistory } from '@buildweek/core';
import { type Estimate, WAIT_CAUSES, type WaitCause } from '@buildweek/results';
import { RunningRatios } from '@buildweek/statistics';
import { ratioEstimate } from './estimates.ts';

/** A share of the lead time of an average job, whatever its part type. */
export type HoursEntry =
  | { readonly what: 'printing'; readonly hours: Estimate }
  | { readonly what: 'all other stages'; readonly hours: Estimate }
  | { readonly what: 'being made outside'; readonly hours: Estimate }
  | { readonly what: 'waiting'; readonly cause: WaitCause; readonly hours: Estimate };

/** Position of the first cause of waiting among the sums. */
const FIRST_WAIT = 3;

/** Where the hours of all jobs go, over all part types; for the headline. */
export class OverallHoursSums {
  /** Printing, all other steps of the lab, being made outside, then the causes of waiting. */
  private readonly ratios = new RunningRatios(FIRST_WAIT + WAIT_CAUSES.length);

  add(parts: readonly PartHoursHistory[]): void {
    const hours = new Float64Array(this.ratios.size);
    const book = (entry: number, milliseconds: number): void => {
      hours[entry] = (hours[entry] ?? 0) + milliseconds / MILLISECONDS_PER_HOUR;
    };
    let jobs = 0;
    for (const part of parts) {
      jobs += part.finishedJobs;
      part.work.forEach((time, step) => {
        const phase = part.steps[step]?.phase;
        book(phase === 'print' ? 0 : phase === 'outside' ? 2 : 1, time);
      });
      part.waits.forEach((time, entry) => {
        book(FIRST_WAIT + (entry % WAIT_CAUSES.length), time);
      });
    }
    this.ratios.add(hours, jobs);
  }

  /** Only what took any time; nothing when no job was finished. */
  results(level: number): HoursEntry[] {
    const { ratios } = this;
    if (!ratios.hasDenominator) return [];
    const entries: HoursEntry[] = [
      { what: 'printing', hours: ratioEstimate(ratios, 0, level) },
      { what: 'all other stages', hours: ratioEstimate(ratios, 1, level) },
      { what: 'being made outside', hours: ratioEstimate(ratios, 2, level) },
      ...WAIT_CAUSES.map(
        (cause, index): HoursEntry => ({
          what: 'waiting',
          cause,
          hours: ratioEstimate(ratios, FIRST_WAIT + index, level),
        }),
      ),
    ];
    return entries.filter((entry) => entry.hours.value > 0);
  }
}
