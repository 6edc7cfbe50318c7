import { expect, test } from 'vitest';
import { optimalAllocation } from './allocation.ts';

// Source: C.-H. Chen, J. Lin, E. Yücesan and S. E. Chick, Discrete Event Dynamic Systems 10 (2000), 251–270 (closed
// form, recomputed).
test.each([
  [[1, 2, 3, 4, 5], [2, 2, 2, 2, 2], 1000, [421.823, 406.1341, 101.5335, 45.126, 25.3834]],
  [[4, 4.6, 5.5, 9], [1, 2, 1.5, 3], 500, [154.8804, 307.4836, 27.6735, 9.9625]],
])('The allocation for means %j is the published one.', (means, deviations, budget, expected) => {
  const found = optimalAllocation(means, deviations, budget);
  found.forEach((share, index) => {
    expect(share).toBeCloseTo(expected[index] as number, 3);
  });
  expect(found.reduce((total, share) => total + share, 0)).toBeCloseTo(budget, 9);
});

test('Two systems share the budget as their deviations.', () => {
  const [first, second] = optimalAllocation([5, 3], [1, 3], 100);
  expect(first).toBeCloseTo(25, 10);
  expect(second).toBeCloseTo(75, 10);
});

test('An allocation that does not exist is refused.', () => {
  expect(() => optimalAllocation([1, 1, 2], [1, 1, 1], 10)).toThrow('More than one');
  expect(() => optimalAllocation([1, 2], [1, 0], 10)).toThrow('above 0');
  expect(() => optimalAllocation([1, 2], [1, 1], 0)).toThrow('above 0');
  expect(() => optimalAllocation([1, 2, 3], [1, 1], 10)).toThrow('its deviation');
  expect(() => optimalAllocation([1], [1], 10)).toThrow('At least 2');
});
