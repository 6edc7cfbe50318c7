import { describe, expect, it } from 'vitest';
import { conservedLoad, priorityWaits, workInService } from './conserved-load.ts';

/** Exponential of 1 h, constant 1 h, exponential of 1.5 h. */
const classes = [
  { arrivalRate: 0.2, service: { mean: 1, variance: 1 } },
  { arrivalRate: 0.3, service: { mean: 1, variance: 0 } },
  { arrivalRate: 0.2, service: { mean: 1.5, variance: 2.25 } },
];

describe('priorities at one server', () => {
  // Source: Cobham 1954; conservation law of Kleinrock; recomputed.
  it('give each class its wait', () => {
    const [first, second, third] = priorityWaits(classes);
    expect(workInService(classes)).toBeCloseTo(0.8, 12);
    expect(first).toBeCloseTo(1, 12);
    expect(second).toBeCloseTo(2, 12);
    expect(third).toBeCloseTo(8, 9);
  });

  it('conserve utilization times wait, whoever goes first', () => {
    expect(conservedLoad(classes)).toBeCloseTo(3.2, 9);
    for (const order of [classes, [...classes].reverse()]) {
      const waits = priorityWaits(order);
      const sum = order.reduce(
        (total, { arrivalRate, service }, index) => total + arrivalRate * service.mean * (waits[index] ?? 0),
        0,
      );
      expect(sum).toBeCloseTo(3.2, 9);
    }
  });
});
