import { logarithmBelowOne } from '@buildweek/numbers';

// Families whose inverse distribution function is a short formula (A. M. Law, "Simulation Modeling and
// Analysis", chapter on generating random variates, inverse transform; from memory).

/** Always the same. */
export class ConstantSampler {
  private readonly value: number;

  constructor(value: number) {
    this.value = value;
  }

  sample(_u: number): number {
    return this.value;
  }
}

/** Every duration between two is equally likely. */
export class UniformSampler {
  private readonly low: number;
  private readonly width: number;

  constructor(low: number, high: number) {
    this.low = low;
    this.width = high - low;
  }

  sample(u: number): number {
    return this.low + u * this.width;
  }
}

/** Density rising in a straight line from `low` to `mode` and falling to `high`. */
export class TriangularSampler {
  private readonly low: number;
  private readonly high: number;
  /** Probability of staying below the mode. */
  private readonly below: number;
  private readonly risingArea: number;
  private readonly fallingArea: number;

  constructor(low: number, mode: number, high: number) {
    this.low = low;
    this.high = high;
    this.below = high > low ? (mode - low) / (high - low) : 0;
    this.risingArea = (high - low) * (mode - low);
    this.fallingArea = (high - low) * (high - mode);
  }

  sample(u: number): number {
    return u < this.below
      ? this.low + Math.sqrt(u * this.risingArea)
      : this.high - Math.sqrt((1 - u) * this.fallingArea);
  }
}

/** Without memory. */
export class ExponentialSampler {
  private readonly mean: number;

  constructor(mean: number) {
    this.mean = mean;
  }

  sample(u: number): number {
    return -this.mean * logarithmBelowOne(1 - u);
  }
}

/** Survival exp(−(x / scale)^shape). */
export class WeibullSampler {
  private readonly power: number;
  private readonly scale: number;

  constructor(shape: number, scale: number) {
    this.power = 1 / shape;
    this.scale = scale;
  }

  sample(u: number): number {
    return this.scale * (-Math.log1p(-u)) ** this.power;
  }
}
