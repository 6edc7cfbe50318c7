import { expect, test } from 'vitest';
import { chosenRepetitions } from './chosen.ts';

test('A twentieth of the repetitions is chosen, each once and in order.', () => {
  const chosen = chosenRepetitions('some sources', 1000);
  expect(chosen).toHaveLength(50);
  expect(new Set(chosen).size).toBe(50);
  expect(chosen).toEqual([...chosen].sort((first, second) => first - second));
  expect(Math.min(...chosen)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...chosen)).toBeLessThan(1000);
  expect(chosenRepetitions('some sources', 1000)).toEqual(chosen);
});

test('Other sources choose other repetitions, and in the long run all of them.', () => {
  const times = new Map<number, number>();
  for (let version = 0; version < 200; version++) {
    for (const repetition of chosenRepetitions(`sources ${version}`, 100)) {
      times.set(repetition, (times.get(repetition) ?? 0) + 1);
    }
  }
  // 200 choices of 5 in 100: binomial with mean 10; never chosen has the chance 0.95^200 = 4e-5 for each of 100.
  expect(times.size).toBe(100);
  // Mean 10 and standard deviation 3.1: 27 or more has the chance 5e-6 for each of 100.
  expect(Math.max(...times.values())).toBeLessThan(27);
});
