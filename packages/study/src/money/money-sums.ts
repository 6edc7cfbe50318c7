import type { History } from '@buildweek/core';
import type { Economics, Lab } from '@buildweek/model';
import {
  type BusinessCase,
  COST_KINDS,
  type CostLine,
  type Estimate,
  type EstimateOrRefused,
  type Money,
} from '@buildweek/results';
import {
  clopperPearsonInterval,
  estimateOver,
  onePeriodInterval,
  RunningMeans,
  RunningRatios,
} from '@buildweek/statistics';
import { meanEstimate, possible, ratioOrRefused, signedEstimate } from '../reduce/estimates.ts';
import { type CaseBasis, caseBasis, caseOfPeriod, withoutOutsidePrice } from './business-case.ts';
import { committedCost, purchases } from './committed-cost.ts';
import { medianOverPeriods } from './median-over-periods.ts';
import { notContained } from './not-contained.ts';
import { periodCosts } from './period-costs.ts';
import { WEEKS_PER_YEAR } from './roster-hours.ts';

/** Behind the kinds of cost: all of them, and of the material that of parts made again. */
const TOTAL = COST_KINDS.length;
const REPEATS = TOTAL + 1;
const LINES = REPEATS + 1;

const NO_PARTS = 'No part was finished.';
const NO_JOBS = 'No job was finished.';
const NOTHING_BOUGHT = 'Nothing has to be bought, so that there is nothing to pay back.';

/** Takes in histories one by one, and says what the lab costs and what it is worth. */
export class MoneySums {
  private readonly lab: Lab;
  private readonly economics: Economics;
  private readonly perYear = new RunningMeans(LINES);
  private readonly perPart = new RunningRatios(LINES);
  private readonly perJob = new RunningRatios(LINES);
  /** What a finished part cost in each period in which there was one. */
  private readonly partCosts: number[] = [];
  private readonly cases: CaseSums | null;
  private readonly missingPrices: readonly string[];

  /** @param lab as it is played */
  constructor(lab: Lab, economics: Economics) {
    this.lab = lab;
    this.economics = economics;
    this.missingPrices = withoutOutsidePrice(lab, economics);
    this.cases = this.missingPrices.length === 0 ? new CaseSums(lab, economics) : null;
  }

  add(history: History): void {
    const costs = periodCosts(this.lab, this.economics, history);
    const lines = [...COST_KINDS.map((kind) => costs.byKind[kind]), costs.total, costs.repeats];
    const periodsPerYear = WEEKS_PER_YEAR / costs.weeks;
    this.perYear.add(lines.map((cost) => cost * periodsPerYear));
    this.perPart.add(lines, costs.finishedParts);
    this.perJob.add(lines, costs.finishedJobs);
    if (costs.finishedParts > 0) this.partCosts.push(costs.total / costs.finishedParts);
    this.cases?.add(costs);
  }

  /** @throws RangeError for fewer than 20 replications */
  results(level: number): Money {
    const { lab, economics } = this;
    const line = (index: number): CostLine => ({
      perYear: meanEstimate(this.perYear, index, level),
      perPart: ratioOrRefused(this.perPart, index, level, NO_PARTS),
      perJob: ratioOrRefused(this.perJob, index, level, NO_JOBS),
    });
    const costs = COST_KINDS.map((kind, index) => ({ kind, ...line(index) }));
    return {
      currency: economics.currency,
      committed: committedCost(lab, economics),
      purchases: purchases(lab, economics),
      costs: costs.filter(({ perYear }) => perYear.value > 0),
      total: line(TOTAL),
      perPartOnePeriod: onePeriodInterval(this.partCosts, level),
      repeats: line(REPEATS),
      case: this.cases?.results(level) ?? { kind: 'not compared', reason: noPrices(this.missingPrices) },
      notContained: notContained(lab, economics),
    };
  }
}

function noPrices(parts: readonly string[]): string {
  const names = parts.map((part) => `"${part}"`).join(', ');
  return `What ${names} ${parts.length === 1 ? 'costs' : 'cost'} outside is not stated: without "price outside" at every part that is asked for, the lab cannot be set against sending everything out.`;
}

/** The lab against sending everything out, period by period. */
class CaseSums {
  private readonly basis: CaseBasis;
  private readonly isBought: boolean;
  /** Cost outside in a year, saved in a year, net present value. */
  private readonly means = new RunningMeans(3);
  private readonly paybacks: number[] = [];
  private readonly rates: number[] = [];

  constructor(lab: Lab, economics: Economics) {
    this.basis = caseBasis(lab, economics);
    this.isBought = purchases(lab, economics).some(({ amount }) => amount > 0);
  }

  add(costs: Parameters<typeof caseOfPeriod>[1]): void {
    const found = caseOfPeriod(this.basis, costs);
    this.means.add([found.outsidePerYear, found.savedPerYear, found.netPresentValue]);
    this.paybacks.push(found.paybackYears);
    // What never gives anything back is worse than any rate.
    this.rates.push(found.internalRate ?? Number.NEGATIVE_INFINITY);
  }

  results(level: number): BusinessCase {
    const { years, interest, paybackYears } = this.basis.economics;
    const inTime = this.paybacks.filter((payback) => payback <= paybackYears).length;
    const replications = this.paybacks.length;
    const whenBought = (value: () => EstimateOrRefused): EstimateOrRefused =>
      this.isBought ? value() : { kind: 'refused', reason: NOTHING_BOUGHT };
    return {
      kind: 'compared',
      years,
      interest,
      paybackWithinYears: paybackYears,
      outsidePerYear: meanEstimate(this.means, 0, level),
      savedPerYear: signedEstimate(this.means, 1, level),
      netPresentValue: signedEstimate(this.means, 2, level),
      paybackYears: whenBought(() => medianOverPeriods(this.paybacks, level, `within ${years} years`)),
      paidBackInTime: whenBought(() => {
        const share = estimateOver(replications, () => clopperPearsonInterval(inTime, replications, level));
        return share.kind === 'estimate' ? possible(share as Estimate, 1) : share;
      }),
      internalRate: whenBought(() => medianOverPeriods(this.rates, level, 'at any rate')),
    };
  }
}
