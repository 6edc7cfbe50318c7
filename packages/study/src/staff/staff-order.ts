import { SPEED_MEASURE, type StaffPlan } from '@buildweek/results';

/** What decides between ways of staffing: the first of these that is known of the lab as it is. */
const DECIDING: readonly string[] = [SPEED_MEASURE, 'jobs on time', 'mean lead time'];

/** Position of the measure that puts ways of staffing in order; -1 when none is known of today. */
export function decidingMeasure([today]: readonly StaffPlan[]): number {
  if (today === undefined) return -1;
  const found = DECIDING.map((name) =>
    today.measures.findIndex((measure) => measure.name === name && measure.value.kind === 'estimate'),
  );
  return found.find((index) => index >= 0) ?? -1;
}

/** Whether the first of two has the better value in a measure; one without a value is behind. */
export function isBetter(one: StaffPlan, other: StaffPlan, measure: number): boolean {
  const [first, second] = [one.measures[measure], other.measures[measure]];
  if (first?.value.kind !== 'estimate') return false;
  if (second?.value.kind !== 'estimate') return true;
  const difference = first.value.value - second.value.value;
  return first.better === 'higher' ? difference > 0 : difference < 0;
}
