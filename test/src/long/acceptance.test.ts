import { expect, test } from 'vitest';
import { acceptanceBand } from './acceptance.ts';

// Source: binomial limits at 99.9 %, two-sided (recomputed).
test.each([
  [200, 179, 198],
  [500, 458, 489],
  [1000, 926, 971],
  [2000, 1867, 1931],
])('Of %i intervals of level 0.95 between %i and %i may hold.', (repetitions, fewest, most) => {
  expect(acceptanceBand(repetitions, 0.95)).toEqual({ fewest, most });
});
