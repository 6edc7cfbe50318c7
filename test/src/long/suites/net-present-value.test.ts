import { describe, expect, test } from 'vitest';
import { heldBy, testValue } from '../values/test-value.ts';
import { NET_PRESENT_VALUE, netPresentValue, TRUE_NET_PRESENT_VALUE } from './net-present-value.ts';

describe(NET_PRESENT_VALUE.title, () => {
  testValue(NET_PRESENT_VALUE, TRUE_NET_PRESENT_VALUE);

  // A count of jobs in place of pieces made, or a queue that is one job longer or shorter than the rule allows.
  test.each([
    ['all jobs were made in the lab', 0],
    ['one more job might wait', 0.8 ** 5 / (1 + 0.8 + 0.8 ** 2 + 0.8 ** 3 + 0.8 ** 4 + 0.8 ** 5)],
    ['one fewer job might wait', 0.8 ** 3 / (1 + 0.8 + 0.8 ** 2 + 0.8 ** 3)],
  ])('A value as if %s would be noticed.', (_, share) => {
    expect(heldBy(NET_PRESENT_VALUE, netPresentValue(share))).toBe('too seldom');
  });
});
