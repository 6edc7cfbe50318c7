import type { ArrivalPattern, ProfileSpan } from '@buildweek/model';
import { HOURS_PER_WEEK, MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK, toMilliseconds } from './clock.ts';
import type { LocalTime } from './local-time.ts';
import type { WeekFactors } from './week-factors.ts';

export type PoissonPattern = Extract<ArrivalPattern, { kind: 'poisson' }>;

/** Demand that has shrunk below so many arrivals a week counts as over. */
const FEWEST_PER_WEEK = 1e-12;
const WEEKS_PER_MONTH = 365.25 / 12 / 7;

/** Rates that are constant between boundaries of the week. */
interface WeeklyRates {
  /** Local milliseconds since Monday 00:00: the ends of the segments, ascending; the last is the week's end. */
  readonly ends: Float64Array;
  /** Expected arrivals per millisecond in each segment, at the start of the plan. */
  readonly rates: Float64Array;
}

/**
 * Poisson arrivals whose rate is constant over segments of the local week and grows from week to week. The
 * next arrival is where the expected number of arrivals since the last one reaches a unit exponential draw.
 *
 * Source: E. Çınlar, "Introduction to Stochastic Processes" (1975), section 4.7, inversion of the cumulative
 * rate function (from memory).
 */
export class PiecewiseArrivals {
  private readonly pattern: PoissonPattern;
  private readonly localTime: LocalTime;
  private readonly weekly: WeeklyRates;
  private readonly weeklyGrowth: number;
  private readonly factors: WeekFactors | null;
  /** The last arrival, elapsed and not rounded, and the segment it lies in, from `start` to `end`. */
  private last = 0;
  private segment = 0;
  private week = 0;
  private start = 0;
  private end = 0;
  private rate = 0;
  private growth = 1;
  private factor = 1;

  /** @throws RangeError when no hour of the profile has a weight */
  constructor(pattern: PoissonPattern, localTime: LocalTime, factors: WeekFactors | null = null) {
    this.pattern = pattern;
    this.factors = factors;
    this.localTime = localTime;
    this.weekly = weeklyRates(pattern);
    this.weeklyGrowth = (1 + pattern.growthPerMonth) ** (1 / WEEKS_PER_MONTH);
    this.enter(0);
  }

  /** As told in `Arrivals`. */
  next(u: number): number {
    let time = this.last;
    let expected = -Math.log1p(-u);
    while (this.pattern.perWeek * this.growth >= FEWEST_PER_WEEK) {
      const untilEnd = this.rate * (this.end - time);
      if (expected < untilEnd) {
        this.last = time + expected / this.rate;
        return this.last;
      }
      expected -= untilEnd;
      time = this.end;
      this.enterNext();
    }
    this.last = Number.POSITIVE_INFINITY;
    return this.last;
  }

  /** Looks up the segment that contains an elapsed time. */
  private enter(time: number): void {
    const local = this.localTime.toLocal(time);
    this.week = Math.floor(local / MILLISECONDS_PER_WEEK);
    const intoWeek = local - this.week * MILLISECONDS_PER_WEEK;
    this.segment = 0;
    while (this.weekly.ends[this.segment] <= intoWeek) this.segment++;
    this.growth = this.weeklyGrowth ** this.week;
    this.factor = this.factorOf(this.week);
    this.take(time);
  }

  private enterNext(): void {
    if (this.end === this.localTime.nextChange(this.start)) {
      // The clock jumps: the segment goes on, or others are skipped or come again.
      this.enter(this.end);
      return;
    }
    this.segment++;
    if (this.segment === this.weekly.ends.length) {
      this.segment = 0;
      this.week++;
      this.growth = this.weeklyGrowth ** this.week;
      this.factor = this.factorOf(this.week);
    }
    this.take(this.end);
  }

  /** Takes the current segment from an elapsed time within it to its end or to the next clock change. */
  private take(start: number): void {
    const localEnd = this.week * MILLISECONDS_PER_WEEK + this.weekly.ends[this.segment];
    const offset = this.localTime.toLocal(start) - start;
    this.start = start;
    this.end = Math.min(localEnd - offset, this.localTime.nextChange(start));
    this.rate = this.weekly.rates[this.segment] * this.growth * this.factor;
  }

  /** What a week is of an expected one. */
  private factorOf(week: number): number {
    const { weekVariation = 0 } = this.pattern;
    return this.factors === null || weekVariation === 0 ? 1 : this.factors.of(week, weekVariation);
  }
}

function weeklyRates(pattern: PoissonPattern): WeeklyRates {
  const spans = wrapped(pattern.profile ?? [{ fromHour: 0, toHour: HOURS_PER_WEEK, weight: 1 }]);
  const total = spans.reduce((sum, span) => sum + span.weight * (span.toHour - span.fromHour), 0);
  if (!(total > 0)) throw new RangeError('An arrival profile needs an hour with a weight above zero.');
  const boundaries = new Set([0, HOURS_PER_WEEK]);
  for (const span of spans) boundaries.add(span.fromHour).add(span.toHour);
  const hours = [...boundaries].sort((a, b) => a - b);
  const perHour = hours.slice(1).map((end, index) => {
    const middle = (hours[index] + end) / 2;
    const weights = spans.filter((span) => span.fromHour < middle && middle < span.toHour);
    return (weights.reduce((sum, span) => sum + span.weight, 0) * pattern.perWeek) / total;
  });
  return {
    ends: Float64Array.from(hours.slice(1), toMilliseconds),
    rates: Float64Array.from(perHour, (rate) => rate / MILLISECONDS_PER_HOUR),
  };
}

/** Cuts spans that run over the end of the week and puts the rest at its beginning. */
function wrapped(profile: readonly ProfileSpan[]): ProfileSpan[] {
  return profile.flatMap((span) =>
    span.toHour <= HOURS_PER_WEEK
      ? [span]
      : [
          { ...span, toHour: HOURS_PER_WEEK },
          { ...span, fromHour: 0, toHour: span.toHour - HOURS_PER_WEEK },
        ],
  );
}
