import type { History } from '@buildweek/core';
import type { Lab, Target } from '@buildweek/model';
import type { TargetResult, TargetVerdict } from '@buildweek/results';
import { clopperPearsonInterval, estimateOver, ratioInterval } from '@buildweek/statistics';
import { possible } from '../reduce/estimates.ts';
import { isObserved, type ObservedTarget, observeTarget } from './observation.ts';
import { targetMeaning } from './target-meaning.ts';
import { type Confidence, TargetSeries } from './target-series.ts';

/** Takes in histories one by one, and judges each target by all of them. */
export class TargetSums {
  private readonly lab: Lab;
  private readonly targets: readonly { readonly target: ObservedTarget; readonly series: TargetSeries }[];

  /** @param lab as it is played */
  constructor(lab: Lab, targets: readonly Target[]) {
    this.lab = lab;
    this.targets = targets.filter(isObserved).map((target) => ({ target, series: new TargetSeries() }));
  }

  add(history: History): void {
    for (const { target, series } of this.targets) series.add(observeTarget(this.lab, target, history));
  }

  /**
   * @param weeks measured, for words
   * @param level confidence from which on a target is called met or missed, and that of the intervals
   * @throws RangeError for fewer than 20 replications
   */
  results(weeks: number, level: number): TargetResult[] {
    return this.targets.map(({ target, series }) => resultOf(target, series, weeks, level));
  }
}

function resultOf(target: ObservedTarget, series: TargetSeries, weeks: number, level: number): TargetResult {
  const { wording, kind, meaning } = target;
  const bound = kind === 'busy' ? 'at most' : 'at least';
  const asked = kind === 'busy' ? target.atMost : target.share;
  const common = {
    wording,
    meaning: targetMeaning(target, weeks),
    kind,
    unit: 'share',
    bound,
    asked,
    level,
  } as const;
  if (series.isEmpty) {
    const reason = kind === 'busy' ? 'Nobody was on duty.' : 'No such job came.';
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
  const found = long.kind === 'estimate' ? possible(long, 1) : long;
  if (meaning.kind === 'long run') {
    const confidence = series.confidenceOfShare(bound, asked);
    return { ...common, found, periods: null, verdict: verdictOf(confidence, level), confidence };
  }
  const confidence = series.confidenceOfChance(meaning.chance);
  const share = clopperPearsonInterval(series.reached, replications, level);
  const periods = { asked: meaning.chance, found: { kind: 'estimate', replications, ...share } } as const;
  return { ...common, found, periods, verdict: verdictOf(confidence, level), confidence };
}

function verdictOf({ met, missed }: Confidence, level: number): TargetVerdict {
  if (met >= level) return 'met';
  return missed >= level ? 'missed' : 'not decided';
}
