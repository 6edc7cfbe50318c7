import { betaQuantile, inverseNormal } from '@buildweek/numbers';
import { checkLevel } from './checks.ts';
import type { Interval } from './interval.ts';

/**
 * Score interval of a probability from independent trials.
 * Source: E. B. Wilson, "Probable inference, the law of succession, and statistical inference", Journal of the
 * American Statistical Association 22 (1927), 209–212.
 * @throws RangeError unless 0 ≤ successes ≤ trials are whole numbers, trials ≥ 1 and 0 < level < 1
 */
export function wilsonInterval(successes: number, trials: number, level: number): Interval {
  checkTrials(successes, trials, level);
  const value = successes / trials;
  const square = inverseNormal((1 + level) / 2) ** 2;
  const centre = (successes + square / 2) / (trials + square);
  const half = (Math.sqrt(square) * Math.sqrt(value * (1 - value) * trials + square / 4)) / (trials + square);
  return {
    value,
    low: successes === 0 ? 0 : centre - half,
    high: successes === trials ? 1 : centre + half,
    level,
  };
}

/**
 * Exact interval of a probability from independent trials: covers with at least the level, often with more.
 * Source: C. J. Clopper and E. S. Pearson, "The use of confidence or fiducial limits illustrated in the case of
 * the binomial", Biometrika 26 (1934), 404–413.
 * @throws RangeError as for the score interval
 */
export function clopperPearsonInterval(successes: number, trials: number, level: number): Interval {
  checkTrials(successes, trials, level);
  const tail = (1 - level) / 2;
  const failures = trials - successes;
  return {
    value: successes / trials,
    low: successes === 0 ? 0 : betaQuantile(tail, successes, failures + 1),
    high: failures === 0 ? 1 : betaQuantile(1 - tail, successes + 1, failures),
    level,
  };
}

function checkTrials(successes: number, trials: number, level: number): void {
  checkLevel(level);
  const whole = Number.isInteger(successes) && Number.isInteger(trials);
  if (!(whole && trials >= 1 && successes >= 0 && successes <= trials)) {
    throw new RangeError(`${successes} successes in ${trials} trials cannot be`);
  }
}
