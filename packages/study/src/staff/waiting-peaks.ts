const HOURS_PER_DAY = 24;
const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
/** Hours beside the highest that reach this share of it belong to its block. */
const BLOCK_SHARE = 0.9;
/** Fewer persons than this are rounding, not a shift. */
const SOMEBODY = 0.05;
/** Fewer jobs are not worth a word. */
const LEAST_JOBS = 0.1;

/** Hours of one day in which most jobs wait for people. */
export interface WaitingPeak {
  /** "Monday 07:00 to 10:00". */
  readonly when: string;
  /** Mean number of jobs that wait in these hours. */
  readonly jobs: number;
}

/**
 * The block of hours in which most jobs wait, among those in which somebody is, or nobody is, on duty.
 *
 * @param waiting mean number of jobs, 168 hours from Monday 00:00
 * @param persons mean number of persons on duty, as many hours
 * @returns null when hardly anything ever waits in such hours
 */
export function waitingPeak(
  waiting: readonly number[],
  persons: readonly number[],
  somebodyIsIn: boolean,
): WaitingPeak | null {
  const isMeant = (hour: number): boolean => (persons[hour] ?? 0) >= SOMEBODY === somebodyIsIn;
  const at = (hour: number): number => (isMeant(hour) ? (waiting[hour] ?? 0) : -1);
  let peak = -1;
  waiting.forEach((_, hour) => {
    if (at(hour) > at(peak)) peak = hour;
  });
  if (at(peak) < LEAST_JOBS) return null;
  const day = Math.floor(peak / HOURS_PER_DAY);
  const belongs = (hour: number): boolean =>
    Math.floor(hour / HOURS_PER_DAY) === day && at(hour) >= BLOCK_SHARE * at(peak);
  let from = peak;
  let to = peak + 1;
  while (belongs(from - 1)) from--;
  while (belongs(to)) to++;
  const sum = waiting.slice(from, to).reduce((total, jobs) => total + jobs, 0);
  const clock = (hour: number): string => `${String(hour - day * HOURS_PER_DAY).padStart(2, '0')}:00`;
  return { when: `${WEEKDAYS[day] ?? ''} ${clock(from)} to ${clock(to)}`, jobs: sum / (to - from) };
}
