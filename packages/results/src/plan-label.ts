import type { ShownPlan } from './plan-answer.ts';

/**
 * A short name of a plan: what differs from the answer, or all of it where there is no answer or this is it.
 *
 * @param chosen the answer; undefined when there is none
 */
export function planLabel(plan: ShownPlan, chosen: ShownPlan | undefined): string {
  if (chosen === undefined || plan.name === chosen.name) return plan.name;
  const differing = plan.choices.filter(
    ({ what, value }) => chosen.choices.find((choice) => choice.what === what)?.value !== value,
  );
  return differing.map(({ what, value }) => `${what} ${value}`).join(', ');
}
