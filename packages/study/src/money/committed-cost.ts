import type { Economics, EquipmentCost, Lab } from '@buildweek/model';
import type { CommittedCost, Purchase } from '@buildweek/results';
import { capitalRecoveryCost } from './formulas/equivalent-annual-cost.ts';
import { paidHours, WEEKS_PER_YEAR } from './roster-hours.ts';

/**
 * Equivalent annual cost of machines and stations with their yearly cost, people's hours of the roster, and other
 * costs; numbers of machines, stations and people are those of the lab, so that plans can be compared. Groups that the
 * economics do not name cost nothing.
 * @throws Error when the lab does not know the hours of a group of people
 */
export function committedCost(lab: Lab, economics: Economics): CommittedCost {
  const equipment = pricedGroups(lab, economics).map(({ group, count, cost }) => ({
    group,
    count,
    capitalPerYear: count * capitalRecoveryCost(cost, economics.interest),
    upkeepPerYear: count * cost.yearlyCost,
  }));
  const people = lab.people.flatMap((group) => {
    const cost = economics.people.find((candidate) => candidate.group === group.name);
    if (cost === undefined) return [];
    const hoursPerYear = group.count * paidHours(lab, group, WEEKS_PER_YEAR);
    return [{ group: group.name, count: group.count, hoursPerYear, perYear: hoursPerYear * cost.perHour }];
  });
  const perYear =
    equipment.reduce((sum, { capitalPerYear, upkeepPerYear }) => sum + capitalPerYear + upkeepPerYear, 0) +
    people.reduce((sum, group) => sum + group.perYear, 0) +
    economics.otherPerYear;
  return { perYear, equipment, people, otherPerYear: economics.otherPerYear };
}

/** The sum of {@link committedCost}: by what plans are put in order. Errors as there. */
export function committedCostPerYear(lab: Lab, economics: Economics): number {
  return committedCost(lab, economics).perYear;
}

/** Machines and stations of the lab beyond those that are owned, as far as they cost anything. */
export function purchases(lab: Lab, economics: Economics): Purchase[] {
  return pricedGroups(lab, economics).flatMap(({ group, count, cost }) => {
    const bought = Math.max(0, count - cost.owned);
    return bought * cost.price === 0
      ? []
      : [{ group, count: bought, amount: bought * cost.price, leadWeeks: cost.leadWeeks }];
  });
}

function pricedGroups(
  lab: Lab,
  economics: Economics,
): { group: string; count: number; cost: EquipmentCost }[] {
  return [...lab.machines, ...lab.stations].flatMap(({ name, count }) => {
    const cost = economics.equipment.find((candidate) => candidate.group === name);
    return cost === undefined ? [] : [{ group: name, count, cost }];
  });
}
