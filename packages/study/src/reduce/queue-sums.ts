import { MILLISECONDS_PER_HOUR, type QueueHistory } from '@buildweek/core';
import type { Queue } from '@buildweek/results';
import { RunningMeans, RunningRatios } from '@buildweek/statistics';
import { meanBand, meanEstimate, ratioOrRefused } from './estimates.ts';
import { percentilesOf } from './percentiles.ts';
import { SampleStore } from './sample-store.ts';

/** Length of one queue and the waits in it. */
export class QueueSums {
  private readonly name: string;
  private readonly kind: QueueHistory['kind'];
  private readonly length = new RunningMeans(1);
  private readonly wait = new RunningRatios(1);
  private readonly byHourOfWeek: RunningMeans;
  private readonly byWeek: RunningMeans;
  private readonly waits = new SampleStore();

  constructor(first: QueueHistory) {
    this.name = first.name;
    this.kind = first.kind;
    this.byHourOfWeek = new RunningMeans(first.byHourOfWeek.length);
    this.byWeek = new RunningMeans(first.byWeek.length);
  }

  /** @param windowLength milliseconds that were measured */
  add(queue: QueueHistory, windowLength: number): void {
    this.length.add([queue.area / windowLength]);
    this.wait.add([queue.waitSum / MILLISECONDS_PER_HOUR], queue.visits);
    this.byHourOfWeek.add(queue.byHourOfWeek);
    this.byWeek.add(queue.byWeek);
    if (queue.waits !== null) this.waits.add(queue.waits, MILLISECONDS_PER_HOUR);
  }

  results(level: number): Queue {
    const waits = this.waits.samples();
    return {
      name: this.name,
      kind: this.kind,
      meanLength: meanEstimate(this.length, 0, level),
      meanWait: ratioOrRefused(this.wait, 0, level, 'Nobody came through this queue.'),
      waitPercentiles:
        waits.length === 0
          ? []
          : percentilesOf(
              waits,
              waits.map(() => 0),
              level,
            ),
      byHourOfWeek: meanBand(this.byHourOfWeek, level),
      byWeek: meanBand(this.byWeek, level),
    };
  }
}
