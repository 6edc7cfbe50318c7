/** The measured part of a replication: from `start` to before `end`, elapsed milliseconds. */
export class MeasuredWindow {
  readonly start: number;
  readonly end: number;
  readonly weeks: number;

  constructor(start: number, end: number, weeks: number) {
    this.start = start;
    this.end = end;
    this.weeks = weeks;
  }

  contains(time: number): boolean {
    return time >= this.start && time < this.end;
  }

  /** @returns milliseconds of the stretch from `from` to `to` that lie in the window */
  overlap(from: number, to: number): number {
    const start = Math.max(from, this.start);
    const end = Math.min(to, this.end);
    return end > start ? end - start : 0;
  }
}
