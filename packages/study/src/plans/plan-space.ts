import type { CountVariation, Economics, Lab } from '@buildweek/model';
import { committedCostPerYear, purchases } from '../money/committed-cost.ts';
import type { Plan } from './plan.ts';

/** The lab with one option of everything that may be worded otherwise. */
export interface PlanVariant {
  /** What is worded otherwise, place and option; empty when nothing may be. */
  readonly options: readonly PlanChoice[];
  /** Whether all of it is as it is today. */
  readonly isToday: boolean;
  readonly lab: Lab;
  /** Null: the scenario says nothing of money. */
  readonly economics: Economics | null;
}

/** One thing that was chosen: a number of something, or a wording. */
export interface PlanChoice {
  readonly what: string;
  readonly value: string;
}

/** A plan with what it costs before anything is played. */
export interface CandidatePlan extends Plan {
  readonly choices: readonly PlanChoice[];
  readonly isToday: boolean;
  /** Equipment, people and other fixed costs, in the currency of the scenario a year; null without money. */
  readonly committedCost: number | null;
  /** What has to be bought; null without money. */
  readonly purchase: number | null;
  /** Prices of its lab; null without money. */
  readonly economics: Economics | null;
}

/**
 * All plans of a scenario in the order in which they are preferred: by what they cost in a year whatever they do;
 * without money, and among plans of one cost, by people, then machines, then stations and carriers.
 */
export function candidatePlans(
  variants: readonly PlanVariant[],
  counts: readonly CountVariation[],
): CandidatePlan[] {
  const plans = variants.flatMap((variant) =>
    combinations(counts).map((numbers) => candidate(variant, counts, numbers)),
  );
  return plans
    .map((plan) => ({ plan, order: orderOf(plan) }))
    .sort((one, other) => firstDifference(one.order, other.order))
    .map(({ plan }) => plan);
}

function combinations(counts: readonly CountVariation[]): number[][] {
  return counts.reduce<number[][]>(
    (found, { from, to }) =>
      found.flatMap((numbers) =>
        Array.from({ length: to - from + 1 }, (_, index) => [...numbers, from + index]),
      ),
    [[]],
  );
}

function candidate(
  { options, isToday, lab, economics }: PlanVariant,
  counts: readonly CountVariation[],
  numbers: readonly number[],
): CandidatePlan {
  const own = counts.reduce(
    (changed, variation, index) => withCount(changed, variation, numbers[index] ?? 0),
    lab,
  );
  const choices = [
    ...counts.map(({ group }, index) => ({ what: group, value: String(numbers[index]) })),
    ...options,
  ];
  const asNow = isToday && counts.every((variation, index) => countIn(lab, variation) === numbers[index]);
  return priced(own, choices, asNow, economics);
}

/** A plan with another number of something than a given one. */
export function withOther(plan: CandidatePlan, variation: CountVariation, count: number): CandidatePlan {
  const choices = plan.choices.map((choice) =>
    choice.what === variation.group ? { ...choice, value: String(count) } : choice,
  );
  return priced(withCount(plan.lab, variation, count), choices, false, plan.economics);
}

function priced(
  lab: Lab,
  choices: readonly PlanChoice[],
  isToday: boolean,
  economics: Economics | null,
): CandidatePlan {
  return {
    name: choices.map(({ what, value }) => `${what} ${value}`).join(', '),
    lab,
    choices,
    isToday,
    committedCost: economics === null ? null : committedCostPerYear(lab, economics),
    purchase:
      economics === null ? null : purchases(lab, economics).reduce((sum, { amount }) => sum + amount, 0),
    economics,
  };
}

/** The lab with another number of something. */
function withCount(lab: Lab, { of, group }: CountVariation, count: number): Lab {
  const counted = <Group extends { readonly name: string; readonly count: number }>(
    groups: readonly Group[],
  ): Group[] => groups.map((one) => (one.name === group ? { ...one, count } : one));
  switch (of) {
    case 'machines':
      return { ...lab, machines: counted(lab.machines) };
    case 'stations':
      return { ...lab, stations: counted(lab.stations) };
    case 'people':
      return { ...lab, people: counted(lab.people) };
    case 'carriers':
      return { ...lab, carriers: counted(lab.carriers) };
  }
}

/** How many there are of what may vary. */
export function countIn(lab: Lab, { of, group }: CountVariation): number {
  return lab[of].find(({ name }) => name === group)?.count ?? 0;
}

function orderOf({ committedCost, lab }: CandidatePlan): number[] {
  const total = (groups: readonly { readonly count: number }[]): number =>
    groups.reduce((sum, { count }) => sum + count, 0);
  return [
    committedCost ?? 0,
    total(lab.people),
    total(lab.machines),
    total(lab.stations) + total(lab.carriers),
  ];
}

function firstDifference(one: readonly number[], other: readonly number[]): number {
  for (const [index, value] of one.entries()) {
    const difference = value - (other[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
