import { type Estimate, type ShownPlan, SPEED_MEASURE } from '@buildweek/results';

/** Words for the verdict on a plan, as a legend has them. */
export const PLAN_VERDICTS = ['meets every target', 'misses a target', 'not decided'] as const;
export type PlanVerdict = (typeof PLAN_VERDICTS)[number];

export function verdictOfPlan({ verdict }: ShownPlan): PlanVerdict {
  if (verdict === 'met') return 'meets every target';
  return verdict === 'missed' ? 'misses a target' : 'not decided';
}

/** Hours within which nine of ten jobs are finished; null where that is not known. */
export function speedOf({ measures }: ShownPlan): Estimate | null {
  const found = measures.find(({ name }) => name === SPEED_MEASURE)?.value;
  return found?.kind === 'estimate' ? found : null;
}

/** Name of a plan with what it is, for a row. */
export function planSuffix({ role, isToday }: ShownPlan): string {
  if (role === 'chosen') return isToday ? ' (answer, today)' : ' (answer)';
  return isToday ? ' (today)' : '';
}
