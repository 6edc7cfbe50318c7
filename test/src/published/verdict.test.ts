import type { Estimate } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { standardErrorOf, verdictOf } from './verdict.ts';

/** Student's t of a 95 % interval with 29 degrees of freedom is 2.0452 (tables). */
const ESTIMATE: Estimate = {
  kind: 'estimate',
  value: 10,
  low: 10 - 2.0452,
  high: 10 + 2 * 2.0452,
  level: 0.95,
  replications: 30,
};

describe('The verdict on an estimate', () => {
  it('takes the standard error from the interval, on the side of the published value', () => {
    expect(standardErrorOf(ESTIMATE, 9)).toBeCloseTo(1, 4);
    expect(standardErrorOf(ESTIMATE, 11)).toBeCloseTo(2, 4);
  });

  it('agrees within 4.75 standard errors at 29 degrees of freedom among 200 assertions', () => {
    expect(verdictOf(ESTIMATE, 5.3, 200)).toMatchObject({ agrees: true });
    expect(verdictOf(ESTIMATE, 5.2, 200)).toMatchObject({ agrees: false });
    expect(verdictOf(ESTIMATE, 19.4, 200)).toMatchObject({ agrees: true });
    expect(verdictOf(ESTIMATE, 19.6, 200)).toMatchObject({ agrees: false });
  });
});
