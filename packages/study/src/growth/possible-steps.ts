import type { Economics, Lab } from '@buildweek/model';
import type { GrowthStep } from '@buildweek/results';
import { committedCostPerYear } from '../money/committed-cost.ts';

/** One more of something. */
export interface PossibleStep
  extends Pick<GrowthStep, 'name' | 'kind' | 'group' | 'price' | 'perYear' | 'leadWeeks'> {
  /** The lab with it. */
  apply(lab: Lab): Lab;
}

/**
 * One more of each group of machines, stations and people: those whose yearly cost is stated first, the cheapest of
 * them first.
 *
 * @param leadWeeks from the order until it works, where the economics do not say it
 */
export function possibleSteps(lab: Lab, economics: Economics | null, leadWeeks: number): PossibleStep[] {
  const kinds = [
    ['machines', (group: string) => `one more ${group} machine`],
    ['stations', (group: string) => `one more ${group} station`],
    ['people', (group: string) => `one more person in “${group}”`],
  ] as const;
  const steps = kinds.flatMap(([kind, nameOf]) =>
    lab[kind].map(({ name: group }): PossibleStep => {
      const apply = (before: Lab): Lab => ({
        ...before,
        [kind]: before[kind].map((one) => (one.name === group ? { ...one, count: one.count + 1 } : one)),
      });
      const cost = economics?.equipment.find((candidate) => candidate.group === group);
      const isPriced =
        cost !== undefined || economics?.people.some((candidate) => candidate.group === group) === true;
      return {
        name: nameOf(group),
        kind,
        group,
        price: cost?.price ?? null,
        perYear:
          economics !== null && isPriced
            ? committedCostPerYear(apply(lab), economics) - committedCostPerYear(lab, economics)
            : null,
        leadWeeks: cost === undefined ? leadWeeks : cost.leadWeeks + cost.rampUpWeeks,
        apply,
      };
    }),
  );
  const cost = ({ perYear }: PossibleStep): number => perYear ?? Number.POSITIVE_INFINITY;
  return steps.sort((one, other) => (cost(one) === cost(other) ? 0 : cost(one) - cost(other)));
}
