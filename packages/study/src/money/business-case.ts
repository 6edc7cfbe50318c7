import type { Economics, Lab } from '@buildweek/model';
import { capitalFlows, sharesMade, upkeepFlows } from './equipment-flows.ts';
import { internalRate } from './formulas/internal-rate.ts';
import { paybackYears } from './formulas/payback.ts';
import { netPresentValue } from './formulas/present-value.ts';
import { outsideCost, type PartOutput, type PeriodCosts } from './period-costs.ts';
import { WEEKS_PER_YEAR } from './roster-hours.ts';

/** The lab against sending everything out, were every year like one period that was played. */
export interface CaseOfPeriod {
  /** From year 0 on: what the lab saves, less what is bought for it. */
  readonly flows: readonly number[];
  /** What the same pieces would cost outside in a year. */
  readonly outsidePerYear: number;
  /** What the lab saves in a year in which all equipment is there, before what equipment costs to buy. */
  readonly savedPerYear: number;
  readonly netPresentValue: number;
  /** Without interest; Infinity when it never comes. */
  readonly paybackYears: number;
  /** Null where there is none, or perhaps several. */
  readonly internalRate: number | null;
}

/** What the case needs and does not depend on what happened in a period. */
export interface CaseBasis {
  readonly economics: Economics;
  readonly capital: readonly number[];
  readonly upkeep: readonly number[];
  /** Upkeep of a year in which everything is there. */
  readonly fullUpkeep: number;
  /** For each part type of the lab, in its order. */
  readonly shares: readonly (readonly number[])[];
}

/** Part types that are asked for and have no price outside: with any of them there is nothing to compare. */
export function withoutOutsidePrice(lab: Lab, economics: Economics): string[] {
  const asked = new Set(lab.demand.map((stream) => stream.part));
  return economics.parts.flatMap(({ part, outside }) => (asked.has(part) && outside === null ? [part] : []));
}

export function caseBasis(lab: Lab, economics: Economics): CaseBasis {
  const full = { ...economics, equipment: economics.equipment.map((cost) => ({ ...cost, leadWeeks: 0 })) };
  return {
    economics,
    capital: capitalFlows(lab, economics),
    upkeep: upkeepFlows(lab, economics),
    fullUpkeep: upkeepFlows(lab, full)[0] ?? 0,
    shares: lab.parts.map((part) => sharesMade(lab, economics, part)),
  };
}

/**
 * Sets the lab against sending everything out: the same finished pieces, made in the lab or bought at their prices
 * outside. Flows stand at the end of their year. While equipment is not there or is run in, the pieces that it would
 * have made are bought outside; people and other costs are paid from the first day.
 * Source: net present value as in `formulas/present-value.ts`; the rest is bookkeeping.
 * @throws Error when a piece has no price outside
 */
export function caseOfPeriod(basis: CaseBasis, costs: PeriodCosts): CaseOfPeriod {
  const { economics } = basis;
  const perYear = WEEKS_PER_YEAR / costs.weeks;
  const outsidePerYear =
    perYear *
    costs.parts.reduce(
      (sum, { part, madePieces, madeJobs, sentOutPieces, sentOutJobs }) =>
        sum + priceOutside(economics, part, madePieces + sentOutPieces, madeJobs + sentOutJobs),
      0,
    );
  const { people, overtime, outside, other } = costs.byKind;
  const steady = perYear * (people + overtime + outside + other);
  /** Cost of a year, with what has to be made outside because equipment is not there. */
  const costOf = (upkeep: number, shareOf: (part: number) => number): number =>
    upkeep +
    steady +
    perYear *
      costs.parts.reduce((sum, output, part) => sum + costOfPart(economics, output, shareOf(part)), 0);
  const flows = basis.capital.map((capital, year) => {
    if (year === 0) return capital;
    const cost = costOf(basis.upkeep[year - 1] ?? 0, (part) => basis.shares[part]?.[year - 1] ?? 1);
    return capital + outsidePerYear - cost;
  });
  return {
    flows,
    outsidePerYear,
    savedPerYear: outsidePerYear - costOf(basis.fullUpkeep, () => 1),
    netPresentValue: netPresentValue(flows, economics.interest),
    paybackYears: paybackYears(flows),
    internalRate: internalRate(flows),
  };
}

function costOfPart(economics: Economics, output: PartOutput, share: number): number {
  const { part, madePieces, madeJobs, material } = output;
  return share * material + (1 - share) * priceOutside(economics, part, madePieces, madeJobs);
}

function priceOutside(economics: Economics, part: string, pieces: number, jobs: number): number {
  return pieces === 0 ? 0 : outsideCost(economics, part, pieces, jobs);
}
