import { meanOfCount } from '@buildweek/core';
import type { CountDistribution } from '@buildweek/model';

/**
 * Expected value of min(1, n / capacity) for a number n of pieces: the share of a batch that a job takes, when a job
 * larger than the capacity runs alone.
 * @param capacity in pieces, above 0
 */
export function meanShareOfBatch(quantity: CountDistribution, capacity: number): number {
  switch (quantity.kind) {
    case 'fixed':
      return Math.min(1, quantity.value / capacity);
    case 'list':
      return (
        quantity.values.reduce((sum, value) => sum + Math.min(1, value / capacity), 0) /
        quantity.values.length
      );
    case 'uniform': {
      const { low, high } = quantity;
      const within = Math.min(high, Math.max(low - 1, Math.floor(capacity)));
      const fitting = ((within - low + 1) * (low + within)) / 2 / capacity;
      return (fitting + (high - within)) / (high - low + 1);
    }
    case 'geometric': {
      // E min(n, c) = Σ P(n ≥ k) for k = 1 … c, plus the broken rest of the capacity times P(n > c).
      const failure = 1 - 1 / meanOfCount(quantity);
      const whole = Math.floor(capacity);
      const tail = failure ** whole;
      return (quantity.mean * (1 - tail) + (capacity - whole) * tail) / capacity;
    }
  }
}
