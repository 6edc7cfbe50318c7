import { inverseNormal, normalCumulative } from '@buildweek/numbers';

/** The largest double below 1. */
const BELOW_ONE = 1 - 2 ** -53;

/** exp(Normal). */
export class LognormalSampler {
  private readonly logMean: number;
  private readonly logStandardDeviation: number;

  constructor(logMean: number, logStandardDeviation: number) {
    this.logMean = logMean;
    this.logStandardDeviation = logStandardDeviation;
  }

  sample(u: number): number {
    return Math.exp(this.logMean + this.logStandardDeviation * inverseNormal(u));
  }
}

/** Normal, conditional on being positive: u is spread over the part of the distribution above zero. */
export class CutNormalSampler {
  private readonly mean: number;
  private readonly standardDeviation: number;
  /** Probabilities that the normal distribution gives to negative and to positive values. */
  private readonly negative: number;
  private readonly positive: number;

  constructor(mean: number, standardDeviation: number) {
    this.mean = mean;
    this.standardDeviation = standardDeviation;
    this.negative = standardDeviation > 0 ? normalCumulative(-mean / standardDeviation) : 0;
    this.positive = standardDeviation > 0 ? normalCumulative(mean / standardDeviation) : 1;
  }

  sample(u: number): number {
    // Whichever tail is small is the one to count from: the other probability has lost its digits.
    const z =
      this.mean > 0
        ? inverseNormal(Math.min(this.negative + u * this.positive, BELOW_ONE))
        : -inverseNormal((1 - u) * this.positive);
    return Math.max(0, this.mean + this.standardDeviation * z);
  }
}
