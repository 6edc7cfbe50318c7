/** Phases of an instant, in the order in which they are handled; dispatch follows when none is left. */
export const PHASE_ENDS = 0;
export const PHASE_WINDOWS_END = 1;
export const PHASE_WINDOWS_BEGIN = 2;
export const PHASE_ARRIVALS = 3;
export const PHASE_TIMERS = 4;

/** Sequence numbers stay below this, so that phase and sequence share one exact double. */
const SEQUENCE_SPAN = 2 ** 48;
const BRANCHES = 4;

/**
 * Future events in the order (time, phase, sequence): events of the same time and phase come out as they
 * went in. A 4-ary heap in typed arrays; nothing is allocated unless it has to grow. The root that was taken
 * out leaves a hole which the next event put in fills, because most events schedule a successor.
 *
 * An event carries a kind, a subject and a stamp. Cancelling is lazy: the owner changes its stamp and the
 * reader of the event compares.
 */
export class EventCalendar {
  private times: Float64Array;
  private orders: Float64Array;
  private kinds: Int32Array;
  private subjects: Int32Array;
  private stamps: Int32Array;
  private size = 0;
  private rootIsHole = false;
  private sequence = 0;

  /** The event taken out last. */
  kind = -1;
  subject = -1;
  stamp = -1;
  time = 0;

  constructor(capacity = 256) {
    this.times = new Float64Array(capacity);
    this.orders = new Float64Array(capacity);
    this.kinds = new Int32Array(capacity);
    this.subjects = new Int32Array(capacity);
    this.stamps = new Int32Array(capacity);
  }

  /** Forgets everything, for the next replication. */
  clear(): void {
    this.size = 0;
    this.rootIsHole = false;
    this.sequence = 0;
    this.time = 0;
  }

  /** Number of events that wait, cancelled ones included. */
  get length(): number {
    return this.rootIsHole ? this.size - 1 : this.size;
  }

  /** Time of the next event; Infinity when there is none. */
  get nextTime(): number {
    if (!this.rootIsHole) return this.size === 0 ? Number.POSITIVE_INFINITY : this.times[0];
    // The hole stays open for the next event put in: the least of the root's children is the next one.
    const { times } = this;
    const end = Math.min(this.size, BRANCHES + 1);
    let least = Number.POSITIVE_INFINITY;
    for (let child = 1; child < end; child++) if (times[child] < least) least = times[child];
    return least;
  }

  /**
   * @param time whole milliseconds; an infinite time is never reached and is not kept
   * @param phase one of the phases above
   */
  schedule(time: number, phase: number, kind: number, subject: number, stamp: number): void {
    if (time === Number.POSITIVE_INFINITY) return;
    const order = phase * SEQUENCE_SPAN + this.sequence++;
    if (this.rootIsHole) {
      this.rootIsHole = false;
      this.siftDown(time, order, kind, subject, stamp);
      return;
    }
    if (this.size === this.times.length) this.grow();
    this.siftUp(this.size++, time, order, kind, subject, stamp);
  }

  /** Takes the next event out into `time`, `kind`, `subject`, `stamp`. @returns false when there is none */
  take(): boolean {
    if (this.rootIsHole) this.closeHole();
    if (this.size === 0) return false;
    this.time = this.times[0];
    this.kind = this.kinds[0];
    this.subject = this.subjects[0];
    this.stamp = this.stamps[0];
    this.rootIsHole = true;
    return true;
  }

  private closeHole(): void {
    this.rootIsHole = false;
    const last = --this.size;
    if (last === 0) return;
    this.siftDown(
      this.times[last],
      this.orders[last],
      this.kinds[last],
      this.subjects[last],
      this.stamps[last],
    );
  }

  private siftUp(
    start: number,
    time: number,
    order: number,
    kind: number,
    subject: number,
    stamp: number,
  ): void {
    const { times, orders } = this;
    let position = start;
    while (position > 0) {
      const parent = (position - 1) >> 2;
      if (times[parent] < time || (times[parent] === time && orders[parent] < order)) break;
      this.move(parent, position);
      position = parent;
    }
    this.put(position, time, order, kind, subject, stamp);
  }

  private siftDown(time: number, order: number, kind: number, subject: number, stamp: number): void {
    const { times, orders, size } = this;
    let position = 0;
    for (;;) {
      const first = position * BRANCHES + 1;
      if (first >= size) break;
      const end = Math.min(first + BRANCHES, size);
      let least = first;
      for (let child = first + 1; child < end; child++) {
        if (times[child] < times[least] || (times[child] === times[least] && orders[child] < orders[least])) {
          least = child;
        }
      }
      if (time < times[least] || (time === times[least] && order < orders[least])) break;
      this.move(least, position);
      position = least;
    }
    this.put(position, time, order, kind, subject, stamp);
  }

  private move(from: number, to: number): void {
    this.times[to] = this.times[from];
    this.orders[to] = this.orders[from];
    this.kinds[to] = this.kinds[from];
    this.subjects[to] = this.subjects[from];
    this.stamps[to] = this.stamps[from];
  }

  private put(
    position: number,
    time: number,
    order: number,
    kind: number,
    subject: number,
    stamp: number,
  ): void {
    this.times[position] = time;
    this.orders[position] = order;
    this.kinds[position] = kind;
    this.subjects[position] = subject;
    this.stamps[position] = stamp;
  }

  private grow(): void {
    const capacity = this.times.length * 2;
    const enlarge = <T extends Float64Array | Int32Array>(from: T, to: T): T => {
      to.set(from);
      return to;
    };
    this.times = enlarge(this.times, new Float64Array(capacity));
    this.orders = enlarge(this.orders, new Float64Array(capacity));
    this.kinds = enlarge(this.kinds, new Int32Array(capacity));
    this.subjects = enlarge(this.subjects, new Int32Array(capacity));
    this.stamps = enlarge(this.stamps, new Int32Array(capacity));
  }
}
