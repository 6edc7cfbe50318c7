import type { HourSpan } from './calendar.ts';
import type { CountDistribution, Distribution, Duration } from './distribution.ts';
import type { SendOutRule } from './outside.ts';
import type { PartShape } from './part-shape.ts';
import type { Stage } from './stage.ts';
import type { RequesterChanges } from './trouble.ts';

/** A kind of part, with its route resolved to stages and times of its own. */
export interface PartType {
  readonly name: string;
  /** Name of the route it was described with; a label. */
  readonly route: string;
  readonly material: string;
  /** Parts share a build only when material and settings agree. */
  readonly settings: string;
  /**
   * Units of the machine's capacity that one piece takes. With a shape: what counts for the launch rule, a share of
   * the capacity such that as many pieces as fit on an empty machine fill it; what fits is packed.
   */
  readonly space: number;
  /** Print time; null when the route has no build. */
  readonly print: PrintTime | ShapedPrint | null;
  readonly stages: readonly Stage[];
}

/**
 * Print time of a build: the longest `perBuild` among its part types, plus `perPart` for every piece. All
 * parts of a build share the luck of that build: one draw for each of the two terms.
 */
export interface PrintTime {
  readonly kind: 'typed';
  readonly perBuild: Duration;
  readonly perPart: Duration;
}

/** The print time follows from the shapes of what is in the build; the machine group has `shaped`. */
export interface ShapedPrint {
  readonly kind: 'shape';
  readonly shape: PartShape;
}

/** Jobs of one part type that arrive by one pattern. */
export interface DemandStream {
  readonly name: string;
  /** Name of a {@link PartType}. */
  readonly part: string;
  readonly arrivals: ArrivalPattern;
  readonly quantity: CountDistribution;
  /** Chance that a job is a rush job, 0 to 1. */
  readonly rushShare: number;
  readonly due: DueRule;
  readonly rushDue: DueRule;
  readonly changes: RequesterChanges;
  /** When its jobs are made outside; null: never. */
  readonly sentOut: SendOutRule | null;
}

export type ArrivalPattern =
  | {
      readonly kind: 'poisson';
      /** Expected arrivals (bursts) per week at the start of the plan. */
      readonly perWeek: number;
      /** Relative rate over the hours of the week, in local time; hours not listed have rate zero. Null: even. */
      readonly profile: readonly ProfileSpan[] | null;
      /** Compound growth per month (365.25 / 12 days), applied week by week; 0 is none. */
      readonly growthPerMonth: number;
      /**
       * Coefficient of variation of a factor on the rate of each week, gamma with mean 1. Busy weeks are busy for all
       * demands alike: they share one draw for each week. Left out or 0: every week has its expected rate.
       */
      readonly weekVariation?: number;
      readonly jobsPerArrival: CountDistribution;
    }
  | {
      readonly kind: 'renewal';
      /** Hours between arrivals, day and night. */
      readonly gap: Distribution;
      readonly jobsPerArrival: CountDistribution;
    }
  | { readonly kind: 'dated'; readonly jobs: readonly DatedJob[] }
  /** An endless backlog: so many jobs are in the lab at any time, whoever leaves is replaced at once. */
  | { readonly kind: 'kept in the lab'; readonly jobs: number };

/** A span of the week with a relative arrival rate per hour. */
export interface ProfileSpan extends HourSpan {
  readonly weight: number;
}

/** A job with a known date. What is null is drawn as for any job of the stream. */
export interface DatedJob {
  /** Local hours since the start of the plan. */
  readonly atHour: number;
  readonly quantity: number | null;
  readonly rush: boolean | null;
  /**
   * Hours of work that are known, by the name of the stage, for the whole job: they take the place of the draw at stages
   * whose time is drawn once per job or per piece. It may be missing.
   */
  readonly workHours?: Readonly<Record<string, number>>;
}

/** How a promise is made when a job's file is complete. */
export type DueRule =
  | { readonly kind: 'none' }
  /** So many hours by the clock. */
  | { readonly kind: 'clock'; readonly hours: number }
  | WorkingDayRule;

/** Closing time of the n-th working day after the day of asking; after the cut-off the next day counts. */
export interface WorkingDayRule {
  readonly kind: 'working days';
  readonly days: number;
  /** Hour of the day; null: none. */
  readonly cutOffHour: number | null;
}
