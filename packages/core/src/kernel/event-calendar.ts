/** Phases of an instant, in the order in which they are handled; dispatch follows when none is left. */
export const PHASE_ENDS = 0;
export const PHASE_WINDOWS_END = 1;
export const PHASE_WINDOWS_BEGIN = 2;
export const PHASE_ARRIVALS = 3;
export const PHASE_TIMERS = 4;

/** Sequence numbers stay below this, so that phase and sequence share one exact double. */
const SEQUENCE_SPAN = 2 ** 48;
const CHILDREN = 4;

/**
 * Future events in the order (time, phase, sequence): events of the same time and phase come out as they
 * went in. A 4-ary heap in typed arrays; nothing is allocated unless it has to grow. The root that was taken
 * out leaves a hole which the next event put in fills, because most events schedule a successor.
 *
 * An event carries a kind, a subject and a stamp. Cancelling is lazy: the owner changes its stamp and the
 * reader of the event compares.
 *
 * What moves in the heap is the time of an event and the number of its slot; the rest of it lies still in the slot.
 * Sifting starts from what stands in the heap already, because a double that is handed to a function which the
 * compiler does not inline is allocated.
 */
export class EventCalendar {
  /** By position in the heap. Behind the last event times are infinite, so that every event has four children. */
  private times: Float64Array;
  /** By position in the heap; behind the last event are the slots that are free. */
  private slots: Int32Array;
  /** By slot. */
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
    this.times = new Float64Array(capacity + CHILDREN).fill(Number.POSITIVE_INFINITY);
    this.slots = Int32Array.from({ length: capacity }, (_, slot) => slot);
    this.orders = new Float64Array(capacity);
    this.kinds = new Int32Array(capacity);
    this.subjects = new Int32Array(capacity);
    this.stamps = new Int32Array(capacity);
  }

  /** Forgets everything, for the next replication. */
  clear(): void {
    this.times.fill(Number.POSITIVE_INFINITY);
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
    const { times } = this;
    if (!this.rootIsHole) return times[0];
    // The hole stays open for the next event put in: the least of the root's children is the next one.
    return Math.min(Math.min(times[1], times[2]), Math.min(times[3], times[4]));
  }

  /**
   * @param time whole milliseconds; an infinite time is never reached and is not kept
   * @param phase one of the phases above
   */
  schedule(time: number, phase: number, kind: number, subject: number, stamp: number): void {
    if (time === Number.POSITIVE_INFINITY) return;
    const isHole = this.rootIsHole;
    if (!isHole && this.size === this.slots.length) this.grow();
    const position = isHole ? 0 : this.size++;
    const slot = this.slots[position];
    this.times[position] = time;
    this.orders[slot] = phase * SEQUENCE_SPAN + this.sequence++;
    this.kinds[slot] = kind;
    this.subjects[slot] = subject;
    this.stamps[slot] = stamp;
    this.rootIsHole = false;
    if (isHole) this.siftDown();
    else this.siftUp(position);
  }

  /** Takes the next event out into `time`, `kind`, `subject`, `stamp`. @returns false when there is none */
  take(): boolean {
    if (this.rootIsHole) this.closeHole();
    if (this.size === 0) return false;
    const slot = this.slots[0];
    this.time = this.times[0];
    this.kind = this.kinds[slot];
    this.subject = this.subjects[slot];
    this.stamp = this.stamps[slot];
    this.rootIsHole = true;
    return true;
  }

  /** Puts the last event into the hole at the root. */
  private closeHole(): void {
    const { times, slots } = this;
    this.rootIsHole = false;
    const last = --this.size;
    const free = slots[0];
    slots[0] = slots[last];
    slots[last] = free;
    times[0] = times[last];
    times[last] = Number.POSITIVE_INFINITY;
    if (last > 1) this.siftDown();
  }

  private siftUp(start: number): void {
    const { times, slots, orders } = this;
    const time = times[start];
    const slot = slots[start];
    let position = start;
    while (position > 0) {
      const parent = (position - 1) >> 2;
      const above = times[parent];
      if (above < time || (above === time && orders[slots[parent]] < orders[slot])) break;
      times[position] = above;
      slots[position] = slots[parent];
      position = parent;
    }
    times[position] = time;
    slots[position] = slot;
  }

  private siftDown(): void {
    const { times, slots, orders, size } = this;
    const time = times[0];
    const slot = slots[0];
    let position = 0;
    for (;;) {
      const first = position * CHILDREN + 1;
      if (first >= size) break;
      let least = first;
      let leastTime = times[first];
      for (let child = first + 1; child < first + CHILDREN; child++) {
        const childTime = times[child];
        if (childTime > leastTime) continue;
        if (childTime === leastTime && !(orders[slots[child]] < orders[slots[least]])) continue;
        least = child;
        leastTime = childTime;
      }
      if (time < leastTime || (time === leastTime && orders[slot] < orders[slots[least]])) break;
      times[position] = leastTime;
      slots[position] = slots[least];
      position = least;
    }
    times[position] = time;
    slots[position] = slot;
  }

  private grow(): void {
    const { slots } = this;
    const capacity = slots.length * 2;
    const enlarge = <T extends Float64Array | Int32Array>(from: T, to: T): T => {
      to.set(from);
      return to;
    };
    this.times = enlarge(this.times, new Float64Array(capacity + CHILDREN).fill(Number.POSITIVE_INFINITY));
    this.slots = enlarge(
      slots,
      Int32Array.from({ length: capacity }, (_, slot) => slot),
    );
    this.orders = enlarge(this.orders, new Float64Array(capacity));
    this.kinds = enlarge(this.kinds, new Int32Array(capacity));
    this.subjects = enlarge(this.subjects, new Int32Array(capacity));
    this.stamps = enlarge(this.stamps, new Int32Array(capacity));
  }
}
