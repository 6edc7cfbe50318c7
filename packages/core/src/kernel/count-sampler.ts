import type { CountDistribution } from '@buildweek/model';

/** Draws whole numbers from 1 up by inversion, one uniform number for each draw. */
export interface CountSampler {
  /**
   * @param u strictly between 0 and 1; a larger u never draws less
   * @returns a whole number, at least 1
   */
  sample(u: number): number;
}

class FixedCountSampler {
  private readonly value: number;

  constructor(value: number) {
    this.value = value;
  }

  sample(_u: number): number {
    return this.value;
  }
}

class UniformCountSampler {
  private readonly low: number;
  private readonly high: number;

  constructor(low: number, high: number) {
    this.low = low;
    this.high = high;
  }

  sample(u: number): number {
    return Math.min(this.low + Math.floor(u * (this.high - this.low + 1)), this.high);
  }
}

class ListCountSampler {
  private readonly sorted: Float64Array;

  constructor(values: readonly number[]) {
    this.sorted = Float64Array.from(values).sort();
  }

  sample(u: number): number {
    return this.sorted[Math.min(Math.floor(u * this.sorted.length), this.sorted.length - 1)];
  }
}

/** Number of trials up to the first success, of chance 1 / mean. */
class GeometricCountSampler {
  private readonly logFailure: number;

  constructor(mean: number) {
    this.logFailure = Math.log1p(-1 / mean);
  }

  sample(u: number): number {
    return 1 + Math.floor(Math.log1p(-u) / this.logFailure);
  }
}

/**
 * @param distribution a distribution over whole numbers from 1 up
 * @throws RangeError when it could give something else
 */
export function createCountSampler(distribution: CountDistribution): CountSampler {
  switch (distribution.kind) {
    case 'fixed':
      checkCount(distribution.value);
      return new FixedCountSampler(distribution.value);
    case 'uniform':
      checkCount(distribution.low);
      checkCount(distribution.high - distribution.low + 1);
      return new UniformCountSampler(distribution.low, distribution.high);
    case 'list':
      checkCount(distribution.values.length);
      distribution.values.forEach(checkCount);
      return new ListCountSampler(distribution.values);
    case 'geometric':
      if (!(distribution.mean >= 1 && distribution.mean < Number.POSITIVE_INFINITY)) {
        throw new RangeError(`The mean of a number from 1 up cannot be ${distribution.mean}.`);
      }
      return new GeometricCountSampler(distribution.mean);
  }
}

/** Exact mean of a distribution over whole numbers. */
export function meanOfCount(distribution: CountDistribution): number {
  switch (distribution.kind) {
    case 'fixed':
      return distribution.value;
    case 'uniform':
      return (distribution.low + distribution.high) / 2;
    case 'list':
      return distribution.values.reduce((sum, value) => sum + value, 0) / distribution.values.length;
    case 'geometric':
      return distribution.mean;
  }
}

/** Exact variance of a distribution over whole numbers. */
export function varianceOfCount(distribution: CountDistribution): number {
  switch (distribution.kind) {
    case 'fixed':
      return 0;
    case 'uniform':
      return ((distribution.high - distribution.low + 1) ** 2 - 1) / 12;
    case 'list': {
      const mean = meanOfCount(distribution);
      const squares = distribution.values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
      return squares / distribution.values.length;
    }
    case 'geometric':
      return distribution.mean * (distribution.mean - 1);
  }
}

function checkCount(value: number): void {
  if (!(Number.isInteger(value) && value >= 1)) {
    throw new RangeError(`${value} is not a whole number from 1 up.`);
  }
}
