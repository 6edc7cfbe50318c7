import type { Economics, EquipmentCost, Lab, PartType } from '@buildweek/model';
import { WEEKS_PER_YEAR } from './roster-hours.ts';

/** A machine group or station group with its costs and how many of it are there and bought. */
interface Priced {
  readonly cost: EquipmentCost;
  readonly owned: number;
  readonly bought: number;
}

/**
 * What buying equipment costs in each year from 0 on, below zero: all is ordered and paid in year 0, and bought again at
 * the end of its life, in the year in which that falls. What it is worth at the end of its life comes in; at the end of
 * the years the rest of its life counts in proportion (straight line). Of what is owned nothing is bought.
 * @returns one number for each year and one more
 */
export function capitalFlows(lab: Lab, economics: Economics): number[] {
  const { years } = economics;
  const flows = Array.from({ length: years + 1 }, () => 0);
  const add = (year: number, amount: number): void => {
    flows[year] = (flows[year] ?? 0) + amount;
  };
  for (const { cost, bought } of pricedGroups(lab, economics)) {
    const { price, residualValue, lifeYears } = cost;
    add(0, -bought * price);
    let at = 0;
    while (at + lifeYears < years - ROUNDING) {
      at += lifeYears;
      add(Math.ceil(at - ROUNDING), bought * (residualValue - price));
    }
    add(years, bought * (price - ((price - residualValue) * (years - at)) / lifeYears));
  }
  return flows;
}

/** Upkeep of each year from 1 on: of what is owned from the start, of what is bought once it is there. */
export function upkeepFlows(lab: Lab, economics: Economics): number[] {
  return yearsOf(economics).map((year) =>
    pricedGroups(lab, economics).reduce((sum, { cost, owned, bought }) => {
      const there = shareOfYear(year, cost.leadWeeks, 0);
      return sum + cost.yearlyCost * (owned + bought * there);
    }, 0),
  );
}

/**
 * Which share of the pieces of a part type can be made in the lab in each year from 1 on: before equipment is delivered
 * and commissioned only what is owned works, then what is bought gives more and more, evenly. The scarcest group of the
 * route decides.
 */
export function sharesMade(lab: Lab, economics: Economics, part: PartType): number[] {
  const onRoute = new Set(
    part.stages.flatMap((stage) =>
      stage.kind === 'build' ? [stage.machineGroup] : stage.kind === 'station' ? [stage.stationGroup] : [],
    ),
  );
  const groups = pricedGroups(lab, economics).filter(({ cost }) => onRoute.has(cost.group));
  return yearsOf(economics).map((year) =>
    groups.reduce((least, { cost, owned, bought }) => {
      const gives = shareOfYear(year, cost.leadWeeks, cost.rampUpWeeks);
      return Math.min(least, (owned + bought * gives) / (owned + bought));
    }, 1),
  );
}

/** Lives that are stated in weeks or months add up to whole years but for rounding. */
const ROUNDING = 1e-9;

function yearsOf(economics: Economics): number[] {
  return Array.from({ length: economics.years }, (_, index) => index + 1);
}

/** Mean over a year of what begins after a lead and rises evenly to all. */
function shareOfYear(year: number, leadWeeks: number, rampUpWeeks: number): number {
  const upTo = (weeks: number): number => {
    const since = Math.max(0, weeks - leadWeeks);
    return since < rampUpWeeks ? since ** 2 / (2 * rampUpWeeks) : since - rampUpWeeks / 2;
  };
  return (upTo(year * WEEKS_PER_YEAR) - upTo((year - 1) * WEEKS_PER_YEAR)) / WEEKS_PER_YEAR;
}

function pricedGroups(lab: Lab, economics: Economics): Priced[] {
  return [...lab.machines, ...lab.stations].flatMap(({ name, count }) => {
    const cost = economics.equipment.find((candidate) => candidate.group === name);
    if (cost === undefined || count === 0) return [];
    const owned = Math.min(count, cost.owned);
    return [{ cost, owned, bought: count - owned }];
  });
}
