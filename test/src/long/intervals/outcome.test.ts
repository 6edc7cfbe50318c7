import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rounded } from '../rounded.ts';
import { holding, lineOf, outcomeOf } from './outcome.ts';

const hours = fc.double({ min: 0.001, max: 1000, noNaN: true });
const interval = fc.tuple(hours, hours, hours).map(([low, high, target]) => holding({ low, high }, target));

test('A line of a record is read as the outcome that it was written from.', () => {
  fc.assert(
    fc.property(
      fc.nat(1000),
      fc.nat(1e6),
      fc.tuple(interval, interval, interval),
      hours,
      (replications, jobs, [mean, p95, prediction], next) => {
        const outcome = { seed: 'suite 7', replications, jobs, mean, p95, prediction, next: rounded(next) };
        expect(outcomeOf(lineOf(outcome))).toEqual(outcome);
      },
    ),
    { seed: 1 },
  );
});

test('A difference in the last places, as between engines, changes no line.', () => {
  const interval = { low: 0.9498311234567, high: 1.0465712345678 };
  const nearly = { low: interval.low * (1 + 1e-14), high: interval.high * (1 - 1e-14) };
  expect(nearly).not.toEqual(interval);
  expect(holding(nearly, 1)).toEqual(holding(interval, 1));
});

test('An interval is judged before its ends are rounded.', () => {
  expect(holding({ low: 1.00000001, high: 2 }, 1)).toEqual({ low: 1, high: 2, holds: false });
});

test.each([
  '',
  'suite 0,1,2',
  'suite 0,39,9,1,2,perhaps,1,2,yes,1,2,yes,1',
  'suite 0,39,9,1,x,no,1,2,yes,1,2,yes,1',
])('Something else than a line of a record is refused: "%s".', (line) => {
  expect(() => outcomeOf(line)).toThrow('This is not a line of a record');
});
