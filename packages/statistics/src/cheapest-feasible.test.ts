import { describe, expect, test } from 'vitest';
import { type CheapestFeasibleSettings, cheapestFeasible } from './cheapest-feasible.ts';
import { draws } from './test-data/draws.ts';
import { mostErrors } from './test-data/most-errors.ts';
import { normalDraws } from './test-data/normal-draws.ts';

const settings: CheapestFeasibleSettings = {
  candidates: 4,
  tolerances: [1, 1],
  alpha: 0.05,
  firstStage: { met: 20, missed: 10 },
  batch: 10,
  most: 2000,
};

/** Candidates with these means, and noise that all share in each replication. */
function observing(means: readonly (readonly number[])[], deviation: number, seed: string) {
  const asked: [number, number, number][] = [];
  const draw = normalDraws(seed);
  const noise: number[][] = [];
  const observe = async (candidate: number, from: number, to: number) => {
    asked.push([candidate, from, to]);
    while (noise.length < to) noise.push([deviation * draw(), deviation * draw()]);
    const own = means[candidate] as readonly number[];
    return noise.slice(from, to).map((shared) => own.map((mean, index) => mean + (shared[index] as number)));
  };
  return { asked, observe };
}

describe('the cheapest feasible candidate', () => {
  const means = [
    [-3, 3],
    [3, -3],
    [3, 3],
    [9, 9],
  ];

  test('is found in order of cost, in batches, and nobody beyond it is looked at', async () => {
    const { asked, observe } = observing(means, 0.5, 'clear');
    const found = await cheapestFeasible(settings, observe);
    expect(found).toMatchObject({ chosen: 2, undecided: [], replications: 40, isStopped: false });
    expect(asked).toEqual([
      [0, 0, 10],
      [1, 0, 10],
      [2, 0, 10],
      [2, 10, 20],
    ]);
    expect(found.looked.map(({ state, failed, decidedAfter }) => [state, failed, decidedAfter])).toEqual([
      ['missed', 0, 10],
      ['missed', 1, 10],
      ['met', null, 20],
    ]);
    const [first] = found.looked;
    expect(first?.constraints[0]?.mean).toBeCloseTo(-3, 0);
    expect(first?.constraints[0]?.atMost).toBeLessThan(0);
    expect(first?.constraints[0]?.atLeast).toBeNull();
    expect(found.looked[2]?.constraints[1]?.atLeast).toBeGreaterThan(0);
  });

  test('does not exist where every candidate misses', async () => {
    const { observe } = observing(
      [
        [-3, 3],
        [3, -3],
        [-3, -3],
        [-9, 9],
      ],
      0.5,
      'none',
    );
    expect(await cheapestFeasible(settings, observe)).toMatchObject({ chosen: null, undecided: [] });
  });

  test('comes with those cheaper ones that could not be ruled out', async () => {
    const near = [
      [0, 5],
      [-9, 5],
      [5, 5],
      [5, 5],
    ];
    const { observe, asked } = observing(near, 20, 'undecided');
    const found = await cheapestFeasible({ ...settings, most: 95 }, observe);
    expect(found.looked[0]).toMatchObject({ state: 'undecided', replications: 95, decidedAfter: null });
    expect(found.undecided).toContain(0);
    expect(asked.filter(([candidate]) => candidate === 0).at(-1)).toEqual([0, 90, 95]);
  });

  test('depends on the observations alone: batches of another size find the same', async () => {
    const near = [
      [-1, 5],
      [0.5, 0.5],
      [1, 1],
      [5, 5],
    ];
    for (const seed of ['one', 'two', 'three']) {
      const answers = await Promise.all(
        [1, 7, 10, 100].map(async (batch) => {
          const { observe } = observing(near, 3, seed);
          const { chosen, looked } = await cheapestFeasible({ ...settings, batch }, observe);
          return {
            chosen,
            looked: looked.map(({ state, decidedAfter, failed }) => [state, decidedAfter, failed]),
          };
        }),
      );
      for (const answer of answers) expect(answer).toEqual(answers[0]);
    }
  });

  test('is not given when somebody stops it, but what was found until then is', async () => {
    const { observe } = observing(means, 0.5, 'stopped');
    const found = await cheapestFeasible(settings, async (candidate, from, to) =>
      candidate === 2 && from === 10 ? null : observe(candidate, from, to),
    );
    expect(found).toMatchObject({ chosen: null, isStopped: true, replications: 30 });
    expect(found.looked.map(({ state }) => state)).toEqual(['missed', 'missed', 'undecided']);
    const nothing = await cheapestFeasible(settings, async () => null);
    expect(nothing).toMatchObject({ chosen: null, isStopped: true, replications: 0, looked: [] });
  });

  test('is refused for settings and observations that cannot be', async () => {
    const { observe } = observing(means, 1, 'refused');
    await expect(cheapestFeasible({ ...settings, candidates: 0 }, observe)).rejects.toThrow('candidates');
    await expect(cheapestFeasible({ ...settings, batch: 2.5 }, observe)).rejects.toThrow('batch');
    await expect(cheapestFeasible({ ...settings, alpha: 1 }, observe)).rejects.toThrow('share of wrong');
    await expect(cheapestFeasible({ ...settings, most: 19 }, observe)).rejects.toThrow('first stage of 20');
    await expect(cheapestFeasible(settings, async () => [[1, 1]])).rejects.toThrow('10 replications');
  });
});

describe('the promise of the search', () => {
  const USES = 1000;

  /** How often a worse plan than the third is chosen, or a dearer one. */
  async function wrongPicks(noiseOf: (seed: string) => () => number): Promise<number> {
    // All rivals lie exactly one tolerance away, on one constraint; so does the right plan, on both.
    const rivals = [
      [-1, 4],
      [4, -1],
      [1, 1],
      [6, 6],
    ];
    let wrong = 0;
    for (let use = 0; use < USES; use++) {
      const noise = noiseOf(`promise ${use}`);
      const shared: number[][] = [];
      const found = await cheapestFeasible(settings, async (candidate, from, to) => {
        while (shared.length < to) {
          const common = noise();
          shared.push([2 * common + noise(), 2 * common + noise()]);
        }
        const own = rivals[candidate] as readonly number[];
        return shared.slice(from, to).map((row) => row.map((value, index) => (own[index] as number) + value));
      });
      if (found.chosen !== 2) wrong++;
    }
    return wrong;
  }

  test('is kept on normal noise that candidates and constraints share', async () => {
    expect(await wrongPicks(normalDraws)).toBeLessThanOrEqual(mostErrors(USES, 0.05));
  });

  test('is kept on skewed noise as well', async () => {
    const skewed = (seed: string) => {
      const draw = draws(seed);
      return () => -Math.log(draw()) - 1;
    };
    expect(await wrongPicks(skewed)).toBeLessThanOrEqual(mostErrors(USES, 0.05));
  });
});
