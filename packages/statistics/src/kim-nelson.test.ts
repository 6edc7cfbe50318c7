import { describe, expect, test } from 'vitest';
import { type KimNelsonSettings, kimNelson } from './kim-nelson.ts';
import { mostErrors } from './test-data/most-errors.ts';
import { normalDraws } from './test-data/normal-draws.ts';

const settings: KimNelsonSettings = {
  systems: 3,
  alpha: 0.05,
  tolerance: 0.5,
  firstStage: 10,
  batch: 10,
  most: 5000,
};

/** Value of one system in one replication, counted from 0. */
function observing(value: (system: number, replication: number) => number) {
  return async (system: number, from: number, to: number) =>
    Array.from({ length: to - from }, (_, index) => value(system, from + index));
}

/** X = mu + b (((c r) mod 23) / 22 − ½), r counted from 1. */
const formula = observing((system, replication) => {
  const [mu, b, c] = [
    [10, 6, 7],
    [10.8, 8, 5],
    [12.5, 6, 11],
  ][system] as [number, number, number];
  return mu + b * (((c * (replication + 1)) % 23) / 22 - 0.5);
});

describe('the choice of the best of several systems', () => {
  // Source: S.-H. Kim and B. L. Nelson, ACM Transactions on Modeling and Computer Simulation 11 (2001), 251–273, for
  // the procedure; made-up data, computed: eliminations after 21 (the third) and 64 (the second) replications.
  test.each([1, 7, 10, 100])(
    'eliminates as computed on data from a formula, in batches of %i',
    async (batch) => {
      const found = await kimNelson({ ...settings, batch }, formula);
      expect(found.chosen).toBe(0);
      expect(found.left).toEqual([0]);
      expect(found.eliminations).toEqual([
        { system: 2, by: 0, replication: 21 },
        { system: 1, by: 0, replication: 64 },
      ]);
    },
  );

  test('counts every replication that was played, those at the end of a batch too', async () => {
    const found = await kimNelson(settings, formula);
    expect(found.played.map(({ replications }) => replications)).toEqual([70, 70, 30]);
    expect(found.replications).toBe(170);
    expect(found.played[2]?.mean).toBeCloseTo(12.5, 0);
  });

  test('takes the first of systems that cannot be told apart, as soon as the first stage is over', async () => {
    const same = await kimNelson(
      settings,
      observing((_, replication) => replication % 3),
    );
    expect(same).toMatchObject({ chosen: 0, replications: 30 });
    expect(same.eliminations).toEqual([
      { system: 1, by: 0, replication: 10 },
      { system: 2, by: 0, replication: 10 },
    ]);
  });

  test('chooses a lone system without playing it', async () => {
    expect(await kimNelson({ ...settings, systems: 1 }, formula)).toMatchObject({
      chosen: 0,
      replications: 0,
    });
  });

  test('ends undecided at the most that may be played, and where somebody stops it', async () => {
    const short = await kimNelson({ ...settings, most: 45 }, formula);
    expect(short).toMatchObject({ chosen: null, left: [0, 1], isStopped: false });
    expect(short.played.map(({ replications }) => replications)).toEqual([45, 45, 30]);
    const stopped = await kimNelson(settings, async (system, from, to) =>
      from >= 40 ? null : formula(system, from, to),
    );
    expect(stopped).toMatchObject({ chosen: null, left: [0, 1], isStopped: true, replications: 110 });
    expect(await kimNelson(settings, async () => null)).toMatchObject({ chosen: null, replications: 0 });
  });

  test('is refused for settings and observations that cannot be', async () => {
    await expect(kimNelson({ ...settings, systems: 0 }, formula)).rejects.toThrow('number of systems');
    await expect(kimNelson({ ...settings, batch: 0 }, formula)).rejects.toThrow('batch');
    await expect(kimNelson({ ...settings, tolerance: 0 }, formula)).rejects.toThrow('tolerance');
    await expect(kimNelson({ ...settings, alpha: 0 }, formula)).rejects.toThrow('share of wrong');
    await expect(kimNelson({ ...settings, firstStage: 1 }, formula)).rejects.toThrow('first stage');
    await expect(kimNelson({ ...settings, most: 9 }, formula)).rejects.toThrow('first stage of 10');
    await expect(kimNelson(settings, async () => [1])).rejects.toThrow('10 replications');
    await expect(kimNelson(settings, async () => new Array(10).fill(Number.NaN))).rejects.toThrow(
      'not finite',
    );
  });
});

describe('with every rival one tolerance away the choice errs no more often than it may', () => {
  const USES = 1000;
  test.each([
    ['on common random numbers', 0.95],
    ['on independent ones', 0],
  ])('%s', async (_, correlation) => {
    let wrong = 0;
    for (let use = 0; use < USES; use++) {
      const draw = normalDraws(`kim nelson ${correlation} ${use}`);
      const values: number[][] = [];
      const found = await kimNelson({ ...settings, systems: 5 }, async (system, from, to) => {
        while (values.length < to) {
          const shared = Math.sqrt(correlation) * draw();
          values.push(
            [0.5, 0.5, 0, 0.5, 0.5].map((mean) => mean + shared + Math.sqrt(1 - correlation) * draw()),
          );
        }
        return values.slice(from, to).map((row) => row[system] as number);
      });
      if (found.chosen !== 2) wrong++;
    }
    expect(wrong).toBeLessThanOrEqual(mostErrors(USES, 0.05));
  });
});
