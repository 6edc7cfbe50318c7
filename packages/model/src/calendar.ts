/** A stretch of the week or of the plan, in hours of local time. */
export interface HourSpan {
  readonly fromHour: number;
  readonly toHour: number;
}

/**
 * When people of a group are there. Local (wall clock) hours; what a clock change does to them is worked
 * out from {@link ClockChange}.
 */
export interface WorkingCalendar {
  readonly name: string;
  /**
   * Windows of the week in hours since Monday 00:00, ascending and not overlapping; the end may lie beyond
   * 168 for a shift that runs from Sunday into Monday. `[0, 168]` is open day and night.
   */
  readonly weekly: readonly HourSpan[];
  /** Days of the plan (0 is its first Monday) on which no window *starts*. Ascending. */
  readonly closedDays: readonly number[];
  /** Additional windows, in local hours since the start of the plan. */
  readonly extra: readonly HourSpan[];
}

/**
 * A change between standard and summer time. From `atHours` on (elapsed since the start of the plan), local
 * time is elapsed time plus `localMinusElapsedHours`.
 */
export interface ClockChange {
  readonly atHours: number;
  readonly localMinusElapsedHours: number;
}
