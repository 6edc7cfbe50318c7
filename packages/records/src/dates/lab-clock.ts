const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** A time on the wall clock of the lab, and whether the clock has changed there. */
export interface ClockTime {
  /** Milliseconds since 1970-01-01T00:00 of the wall clock. */
  readonly civil: number;
  readonly trouble: 'hour shown twice' | 'hour left out' | null;
}

/** The wall clock of a zone: from instants to civil time, and what is odd about a civil time. */
export class LabClock {
  private readonly format: Intl.DateTimeFormat;
  private readonly offsets = new Map<number, number>();

  /** @param zone a name of the IANA time zone database. @throws RangeError for any other */
  constructor(zone: string) {
    this.format = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
    });
  }

  /** What the wall clock shows at an instant. */
  at(instant: number): number {
    return instant + this.offsetAt(instant);
  }

  /** A time that a clock in the lab is said to have shown. */
  shown(civil: number): ClockTime {
    const midnight = Math.floor(civil / DAY) * DAY;
    const before = this.offsetAt(midnight - DAY);
    const after = this.offsetAt(midnight + 2 * DAY);
    if (before === after) return { civil, trouble: null };
    const fits = [before, after].filter((offset) => this.offsetAt(civil - offset) === offset);
    if (fits.length === 2) return { civil, trouble: 'hour shown twice' };
    // With neither, the clock jumped over it: what was meant is as long after the jump.
    return fits.length === 1
      ? { civil, trouble: null }
      : { civil: civil + after - before, trouble: 'hour left out' };
  }

  /** Offsets change on quarters of an hour at the finest. */
  private offsetAt(instant: number): number {
    const key = Math.floor(instant / (HOUR / 4));
    const known = this.offsets.get(key);
    if (known !== undefined) return known;
    const at = key * (HOUR / 4);
    const parts = new Map(this.format.formatToParts(at).map((part) => [part.type, Number(part.value)]));
    const of = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type) ?? 0;
    const local = Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute'));
    const offset = local - at;
    if (this.offsets.size > MOST_KEPT) this.offsets.clear();
    this.offsets.set(key, offset);
    return offset;
  }
}

/** A log of years needs fewer; times from everywhere must not fill the memory. */
const MOST_KEPT = 400_000;
