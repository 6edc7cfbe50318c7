import type { HourSpan } from './calendar.ts';

/**
 * What the hours of each person are held against: inputs of whoever plans. None of them says what the law allows, and
 * hours that keep them all may still be unlawful.
 */
export interface StaffRules {
  /** Shortest rest without a break within the 24 hours from the start of every duty, hours. */
  readonly restHours: number;
  /** Most hours on duty in a week from Monday to Sunday. */
  readonly hoursPerWeek: number;
  /** Most days in a row on which a duty begins. */
  readonly daysInARow: number;
  /** What counts as night, in hours of the day; the end lies beyond 24 where it crosses midnight. */
  readonly night: HourSpan;
}
