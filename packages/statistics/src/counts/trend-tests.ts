import { chiSquareQuantile, normalCumulative } from '@buildweek/numbers';
import { mean } from '../summary.ts';

/** Whether events become more frequent or rarer. */
export interface LaplaceTrend {
  /** Standard normal without a trend; above 0: more and more frequent. */
  readonly score: number;
  readonly pValue: number;
}

/**
 * Laplace's test of events in a period of stated length.
 * Source: H. Ascher and H. Feingold, Repairable Systems Reliability (1984), section 5.2; NIST/SEMATECH e-Handbook of
 * Statistical Methods, section 8.2.3.4.
 *
 * @param times of the events, from 0 at the beginning of the period
 * @param dispersion how many times as much counts vary as Poisson counts, which alone would look like a trend: the score
 *   is less by its square root. Source: P. McCullagh and J. A. Nelder, Generalized Linear Models (1989), section 6.2.3
 * @throws RangeError without an event
 */
export function laplaceTrend(times: readonly number[], end: number, dispersion = 1): LaplaceTrend {
  return laplace(times, end, dispersion);
}

/** The same where the period ended with the last event, which then says nothing of the trend. */
export function laplaceTrendToLastEvent(times: readonly number[]): LaplaceTrend {
  const last = Math.max(...times);
  const position = times.indexOf(last);
  return laplace(
    times.filter((_, index) => index !== position),
    last,
    1,
  );
}

function laplace(times: readonly number[], end: number, dispersion: number): LaplaceTrend {
  if (times.length === 0) throw new RangeError('There is no event to see a trend in.');
  const score = (mean(times) - end / 2) / (end * Math.sqrt(dispersion / (12 * times.length)));
  return { score, pValue: 2 * normalCumulative(-Math.abs(score)) };
}

/** Events whose rate grows as a power of time. */
export interface PowerLaw {
  /** 2 Σ ln(T/tᵢ): chi-square with 2(n − 1) degrees of freedom without a trend. */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Exponent: below 1 the events become rarer. */
  readonly exponent: number;
  /** Expected number of events up to t: rate · t^exponent. */
  readonly rate: number;
  /** Whether the chi-square lies outside its central 95 %. */
  readonly hasTrend: boolean;
}

/**
 * The power-law process of events up to the last of them.
 * Sources: L. H. Crow, "Reliability analysis for complex, repairable systems", in Reliability and Biometry (1974), 379–410;
 * MIL-HDBK-189, section on the chi-square test for trend.
 * @throws RangeError for fewer than two events
 */
export function powerLaw(times: readonly number[]): PowerLaw {
  if (times.length < 2) throw new RangeError('Two events are needed to see a trend.');
  const ascending = [...times].sort((a, b) => a - b);
  const last = ascending.at(-1) ?? 0;
  const logs = ascending.slice(0, -1).reduce((total, time) => total + Math.log(last / time), 0);
  const chiSquare = 2 * logs;
  const degreesOfFreedom = 2 * (times.length - 1);
  const exponent = times.length / logs;
  return {
    chiSquare,
    degreesOfFreedom,
    exponent,
    rate: times.length / last ** exponent,
    hasTrend:
      chiSquare < chiSquareQuantile(0.025, degreesOfFreedom) ||
      chiSquare > chiSquareQuantile(0.975, degreesOfFreedom),
  };
}
