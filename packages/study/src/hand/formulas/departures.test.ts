import { describe, expect, it } from 'vitest';
import { departureVariability } from './departures.ts';

describe('departureVariability', () => {
  // Source: Hopp and Spearman, "Factory Physics", section 8.5; recomputed.
  it.each([
    [1, 1.46],
    [3, 1.189504172],
  ])('behind %s machines is %s', (machines, expected) => {
    expect(departureVariability(0.8, machines, 0.5, 2)).toBeCloseTo(expected, 9);
  });

  it('behind machine "Hare" is what station "Tortoise" gets', () => {
    // Source: Hopp and Spearman, section 8.6, example (from memory): utilization 0.9583, ce² 6.25, ca² 1.
    expect(departureVariability(23 / 24, 1, 1, 6.25)).toBeCloseTo(5.821614583, 9);
  });
});
