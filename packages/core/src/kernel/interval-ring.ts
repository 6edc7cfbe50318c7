import { BinSums } from './bin-sums.ts';
import type { LocalTime } from './local-time.ts';

/** Bins in a ring, such as the hours of the week: an interval may go round any number of times. */
export class IntervalRing {
  private readonly sums: BinSums;
  private readonly width: number;
  private readonly count: number;

  /** @param width of each bin, above zero  @param count number of bins; position 0 is where the first begins */
  constructor(width: number, count: number) {
    this.width = width;
    this.count = count;
    this.sums = new BinSums(count);
  }

  clear(): void {
    this.sums.clear();
  }

  /** Adds the interval from `from` to before `to`, both counted along the ring without end; they may be negative. */
  add(from: number, to: number, weight: number): void {
    if (!(to > from)) return;
    const { width, count, sums } = this;
    const first = Math.floor(from / width);
    const last = Math.floor(to / width);
    const firstBin = first - Math.floor(first / count) * count;
    if (first === last) {
      sums.addToBin(firstBin, weight * (to - from));
      return;
    }
    const lastBin = last - Math.floor(last / count) * count;
    sums.addToBin(firstBin, weight * ((first + 1) * width - from));
    sums.addToBin(lastBin, weight * (to - last * width));
    const full = last - first - 1;
    if (full === 0) return;
    const laps = Math.floor(full / count);
    if (laps > 0) sums.addChange(0, weight * laps);
    if (full === laps * count) return;
    // The rest goes from behind the first bin to before the last one, round the end of the ring if need be.
    sums.addChange(firstBin + 1, weight);
    sums.addChange(lastBin, -weight);
    if (lastBin <= firstBin) sums.addChange(0, weight);
  }

  /** @returns for each bin the sum of weight times the length that lies in it */
  totals(): Float64Array {
    return this.sums.totals(this.width);
  }
}

/**
 * Adds a stay to a ring of local time, such as the hours of the week. The stay is cut where the clock jumps, so
 * that its elapsed length is what is added: an hour that the clock skips gets nothing, one that it shows twice
 * gets both.
 *
 * @param from elapsed milliseconds  @param to elapsed milliseconds
 */
export function addStay(
  ring: IntervalRing,
  localTime: LocalTime,
  from: number,
  to: number,
  weight: number,
): void {
  let start = from;
  while (start < to) {
    const end = Math.min(to, localTime.nextChange(start));
    const local = localTime.toLocal(start);
    ring.add(local, local + (end - start), weight);
    start = end;
  }
}
