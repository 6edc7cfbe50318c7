import type { History } from '@buildweek/core';
import type { BudgetTarget, Economics, Lab, Target } from '@buildweek/model';
import type { TargetResult, TargetVerdict } from '@buildweek/results';
import { clopperPearsonInterval, estimateOver, ratioInterval } from '@buildweek/statistics';
import { possible } from '../reduce/estimates.ts';
import { knownCost } from './known-budget.ts';
import { observeTarget, type PlayedTarget } from './observation.ts';
import { targetMeaning } from './target-meaning.ts';
import { type Confidence, TargetSeries } from './target-series.ts';

/** A target with what the replications say of it; a budget needs none. */
type Judged =
  | { readonly kind: 'played'; readonly target: PlayedTarget; readonly series: TargetSeries }
  | { readonly kind: 'known'; readonly target: BudgetTarget };

/** Takes in histories one by one, and judges each target by all of them. */
export class TargetSums {
  private readonly lab: Lab;
  private readonly economics: Economics | null;
  private readonly targets: readonly Judged[];

  /**
   * @param lab as it is played
   * @param economics needed for targets on money alone
   */
  constructor(lab: Lab, targets: readonly Target[], economics: Economics | null = null) {
    this.lab = lab;
    this.economics = economics;
    this.targets = targets.map((target) =>
      target.kind === 'budget'
        ? { kind: 'known', target }
        : { kind: 'played', target, series: new TargetSeries() },
    );
  }

  /** @throws Error for a target on money without economics */
  add(history: History): void {
    for (const judged of this.targets) {
      if (judged.kind === 'known') continue;
      judged.series.add(observeTarget(this.lab, judged.target, history, this.economics));
    }
  }

  /**
   * @param weeks measured, for words
   * @param level confidence from which on a target is called met or missed, and that of the intervals
   * @throws RangeError for fewer than 20 replications
   * @throws Error for a target on money without economics
   */
  results(weeks: number, level: number): TargetResult[] {
    return this.targets.map((judged) => {
      const currency = this.economics?.currency ?? '';
      return judged.kind === 'played'
        ? playedResult(judged.target, judged.series, currency, weeks, level)
        : this.knownResult(judged.target, weeks, level);
    });
  }

  private knownResult(target: BudgetTarget, weeks: number, level: number): TargetResult {
    const { economics } = this;
    if (economics === null) throw new Error('A budget needs to know what things cost.');
    const value = knownCost(this.lab, target, economics);
    return {
      wording: target.wording,
      meaning: targetMeaning(target, weeks),
      kind: target.kind,
      currency: economics.currency,
      bound: 'at most',
      asked: target.atMost,
      found: { kind: 'known', value },
      periods: null,
      // The sum of many prices must not fail by rounding.
      verdict: value <= target.atMost * (1 + ROUNDING) ? 'met' : 'missed',
      confidence: null,
      level,
    };
  }
}

const ROUNDING = 1e-12;

function playedResult(
  target: PlayedTarget,
  series: TargetSeries,
  currency: string,
  weeks: number,
  level: number,
): TargetResult {
  const { wording, kind } = target;
  const isMoney = kind === 'cost per part';
  const bound = 'share' in target ? 'at least' : 'at most';
  const asked = 'share' in target ? target.share : target.atMost;
  const common = {
    wording,
    meaning: targetMeaning(target, weeks),
    kind,
    currency: isMoney ? currency : null,
    bound,
    asked,
    level,
  } as const;
  if (series.isEmpty) {
    const reason = isMoney
      ? 'No part was finished.'
      : kind === 'busy'
        ? 'Nobody was on duty.'
        : 'No such job came.';
    return {
      ...common,
      found: { kind: 'refused', reason },
      periods: null,
      verdict: 'not decided',
      confidence: null,
    };
  }
  const { replications } = series;
  const long = estimateOver(replications, () => ratioInterval(series.numerators, series.denominators, level));
  const found = long.kind === 'estimate' ? possible(long, isMoney ? Number.POSITIVE_INFINITY : 1) : long;
  const confidence = confidenceOf(target, series);
  if (target.kind === 'cost per part' || target.meaning.kind === 'long run') {
    return { ...common, found, periods: null, verdict: verdictOf(confidence, level), confidence };
  }
  const { chance } = target.meaning;
  const share = clopperPearsonInterval(series.reached, replications, level);
  const periods = { asked: chance, found: { kind: 'estimate', replications, ...share } } as const;
  return { ...common, found, periods, verdict: verdictOf(confidence, level), confidence };
}

/** How clearly the replications speak for a target, and against it. */
export function confidenceOf(target: PlayedTarget, series: TargetSeries): Confidence {
  if (target.kind === 'cost per part') return series.confidenceOfMean();
  if (target.meaning.kind !== 'long run') return series.confidenceOfChance(target.meaning.chance);
  return target.kind === 'busy'
    ? series.confidenceOfShare('at most', target.atMost)
    : series.confidenceOfShare('at least', target.share);
}

/** @param level confidence from which on a target is called met or missed */
export function verdictOf({ met, missed }: Confidence, level: number): TargetVerdict {
  if (met >= level) return 'met';
  return missed >= level ? 'missed' : 'not decided';
}
