import { MILLISECONDS_PER_WEEK } from '../kernel/clock.ts';
import { IntervalBins } from '../kernel/interval-bins.ts';
import type { LocalTime } from '../kernel/local-time.ts';
import type { QueueHistory } from './history.ts';
import { HoursOfWeek } from './hours-of-week.ts';
import { Sample } from './sample.ts';
import type { MeasuredWindow } from './window.ts';

/** Length of one queue over time, and the waits of those who went through it. */
export class QueueRecorder {
  private readonly name: string;
  private readonly kind: QueueHistory['kind'];
  private readonly window: MeasuredWindow;
  private readonly hours: HoursOfWeek;
  private readonly weeks: IntervalBins;
  private readonly waits: Sample | null;
  private area = 0;
  private visits = 0;
  private waitSum = 0;

  constructor(
    name: string,
    kind: QueueHistory['kind'],
    window: MeasuredWindow,
    localTime: LocalTime,
    keepWaits: boolean,
  ) {
    this.name = name;
    this.kind = kind;
    this.window = window;
    this.hours = new HoursOfWeek(window, localTime);
    this.weeks = new IntervalBins(window.start, MILLISECONDS_PER_WEEK, window.weeks);
    this.waits = keepWaits ? new Sample() : null;
  }

  /**
   * Something leaves the queue, or the replication ends while it waits.
   *
   * @param weight jobs that it stands for
   * @param from when it came, elapsed milliseconds
   * @param to now
   */
  leaves(weight: number, from: number, to: number): void {
    const { window } = this;
    if (window.contains(to)) {
      this.visits += weight;
      this.waitSum += weight * (to - from);
      this.waits?.add(to - from);
    }
    const start = Math.max(from, window.start);
    const end = Math.min(to, window.end);
    if (!(end > start)) return;
    this.area += weight * (end - start);
    this.hours.add(start, end, weight);
    this.weeks.add(start, end, weight);
  }

  history(): QueueHistory {
    return {
      name: this.name,
      kind: this.kind,
      area: this.area,
      visits: this.visits,
      waitSum: this.waitSum,
      waits: this.waits === null ? null : this.waits.sorted(),
      byHourOfWeek: this.hours.averages(),
      byWeek: this.weeks.totals().map((total) => total / MILLISECONDS_PER_WEEK),
    };
  }
}
