import {
  type CensoredSample,
  type DurationFit,
  type DurationLaw,
  fitDurations,
  meanOfLaw,
} from '@buildweek/statistics';
import type { Sourced, SourcedChoice } from '../first-scenario/learned-words.ts';

/** Families that are fitted to times of work. */
export const FITTED_FAMILIES = ['lognormal', 'gamma', 'weibull'] as const;
const LEVEL = 0.95;

/**
 * Measured times of work in the words of a scenario: the family that fits best, the others that fit about as well beside
 * it; of fewer than ten a range, with a warning.
 *
 * @param sample in the unit that is written
 * @param unit behind the number: "min", or "h"
 * @param basis what it is for: "per job"; empty where the place says it
 * @param what was measured: "runs"
 * @returns null where nothing was measured
 */
export function durationWords(
  sample: CensoredSample,
  unit: string,
  basis: string,
  what: string,
): SourcedChoice | null {
  const positive = {
    values: sample.values.filter((value) => value > 0),
    censored: sample.censored.filter((value) => value > 0),
  };
  if (positive.values.length === 0) return null;
  const found = fitDurations(positive, FITTED_FAMILIES, LEVEL);
  const open = positive.censored.length === 0 ? '' : ` and ${positive.censored.length} not seen to their end`;
  const counted = `${found.seen} ${what}${open}`;
  const behind = basis === '' ? '' : ` ${basis}`;
  if (found.kind === 'range') {
    const { low, mode, high, warning } = found;
    const value =
      low === high
        ? `${short(low)} ${unit}${behind}`
        : `triangular ${short(low)} to ${short(high)} ${unit}, usually ${short(mode)}${behind}`;
    return { value, source: `${counted}: ${warning}`, others: [] };
  }
  const [best, ...others] = found.fits;
  if (best === undefined) return null;
  return {
    ...sourced(best, unit, behind, `${counted}, by maximum likelihood`),
    others: others
      .filter(({ isAboutAsGood }) => isAboutAsGood)
      .map((fit) => sourced(fit, unit, behind, 'fits about as well')),
  };
}

function sourced(
  { law, mean, p95, aic }: DurationFit,
  unit: string,
  behind: string,
  source: string,
): Sourced {
  return {
    value: `${lawWords(law, unit)}${behind}`,
    source: `${source}; mean ${short(mean.low)} to ${short(mean.high)} ${unit}, 95 of 100 below ${short(p95)} ${unit}, AIC ${aic.toFixed(1)}`,
  };
}

function lawWords(law: DurationLaw, unit: string): string {
  const mean = `mean ${short(meanOfLaw(law))} ${unit}`;
  switch (law.family) {
    case 'lognormal':
      return `lognormal ${mean}, variation ${short(Math.sqrt(Math.expm1(law.logStandardDeviation ** 2)))}`;
    case 'gamma':
    case 'weibull':
      return `${law.family} shape ${short(law.shape)}, ${mean}`;
    case 'exponential':
      return `exponential ${mean}`;
  }
}

/** Three digits that mean something. */
function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
