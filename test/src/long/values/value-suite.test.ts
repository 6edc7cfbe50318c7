import { expect, test } from 'vitest';
import { valueSuite } from './value-suite.ts';

const suite = valueSuite({
  name: 'made up',
  title: 'made up',
  what: 'the difference',
  repetitions: 2,
  played: [],
  truth: -0.1,
  createEstimator: () => async () => ({ value: -0.12345678, low: -0.2, high: -0.0999 }),
});

test('An interval is written with six digits, and whether it holds the true value.', async () => {
  expect(await suite.createPlayer().play(1)).toBe('made up 1,-0.123457,-0.2,-0.0999,yes');
});

test('Intervals that hold the true value are counted, and too few and too many are noticed.', () => {
  const of = (held: number) =>
    suite.verdicts(
      Array.from({ length: 1000 }, (_, use) =>
        use < held ? `made up ${use},-0.1,-0.2,-0.05,yes` : `made up ${use},-0.3,-0.4,-0.2,no`,
      ),
    )[0];
  expect([925, 926, 971, 972].map((held) => of(held)?.isWithin)).toEqual([false, true, true, false]);
  expect(of(926)?.words).toBe(
    'the 95 % interval of the difference holds it in 926 of 1000 studies; 926 to 971 are accepted',
  );
});

test.each([
  'made up 1,-0.1,-0.2,-0.05,yes',
  'made up 0,-0.1,-0.2,-0.05,no',
  'made up 0,-0.3,-0.4,-0.2,yes',
  'made up 0,-0.1,-0.2,-0.05,perhaps',
  'made up 0,-0.5,-0.2,-0.05,yes',
  'made up 0,-0.1,-0.2,yes',
])('A line that contradicts itself or is of another study is refused: %s', (line) => {
  expect(() => suite.check('made up 0,-0.1,-0.2,-0.05,yes', 0)).not.toThrow();
  expect(() => suite.check(line, 0)).toThrow('npm run test:long');
});
