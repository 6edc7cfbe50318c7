import { describe, expect, test } from 'vitest';
import { type FeasibilitySettings, FeasibilityTest } from './feasibility.ts';
import { mostErrors } from './test-data/most-errors.ts';
import { normalDraws } from './test-data/normal-draws.ts';

const settings: FeasibilitySettings = {
  tolerances: [1],
  falseMet: 0.02,
  falseMissed: 0.05,
  firstStage: { met: 20, missed: 10 },
};

/** Feeds one constraint until it is decided. */
function decide(own: FeasibilitySettings, next: (replication: number) => number): FeasibilityTest {
  const one = new FeasibilityTest(own);
  for (let replication = 1; one.state === 'undecided'; replication++) one.add([next(replication)]);
  return one;
}

describe('the feasibility test', () => {
  // Alternating ±1 has the variance 10/9 in the first ten and 20/19 in the first twenty.
  const alternating = (mean: number) => (replication: number) => mean + (replication % 2 === 0 ? 1 : -1);

  test('leaves the region where arithmetic says', () => {
    const equal = { ...settings, falseMet: 0.05, firstStage: { met: 10, missed: 10 } };
    // h² = 6.0129 as published; a = ½ · 6.0129 · 10/9 = 3.3405. The line 3.3405 − r/2 is below 0 at the tenth
    // replication, where the region has ended and the sign decides.
    expect(decide(equal, alternating(0.1))).toMatchObject({ state: 'met', decidedAfter: 10 });
    expect(decide(equal, alternating(-0.1))).toMatchObject({ state: 'missed', decidedAfter: 10 });
    // With a tolerance of 0.5: a = 6.681 and the line is 6.681 − r/4. Even r: 0.2 r; odd r: 0.2 r − 1. First 14, as
    // 0.2 · 14 = 2.8 < 3.18, then 16: 3.2 ≥ 2.68.
    const narrow = { ...equal, tolerances: [0.5] };
    expect(decide(narrow, alternating(0.2))).toMatchObject({ state: 'met', decidedAfter: 16 });
    // Odd r: −0.2 r − 1, even: −0.2 r. At r = 13: −3.6 ≤ −(6.681 − 3.25).
    expect(decide(narrow, alternating(-0.2))).toMatchObject({ state: 'missed', decidedAfter: 13, failed: 0 });
  });

  test('says "missed" from its own first stage on, and "met" only from a later one', () => {
    expect(decide(settings, alternating(-9)).decidedAfter).toBe(10);
    expect(decide(settings, alternating(9)).decidedAfter).toBe(20);
  });

  test('decides a measure that never varies at the first look', () => {
    expect(decide(settings, () => 0.001)).toMatchObject({ state: 'met', decidedAfter: 20 });
    expect(decide(settings, () => 0)).toMatchObject({ state: 'met', decidedAfter: 20 });
    expect(decide(settings, () => -0.001)).toMatchObject({ state: 'missed', decidedAfter: 10 });
  });

  test('misses a plan with its first constraint, and meets it with its last', () => {
    const two = new FeasibilityTest({ ...settings, tolerances: [1, 1] });
    for (let replication = 1; replication <= 19; replication++) two.add([5, replication <= 10 ? -0.5 : -5]);
    expect(two).toMatchObject({ state: 'missed', decidedAfter: 10, failed: 1, replications: 19 });
    expect(two.stateOf(0)).toBe('undecided');
    const both = new FeasibilityTest({ ...settings, tolerances: [1, 1] });
    for (let replication = 1; replication <= 20; replication++) both.add([5, 6]);
    expect(both).toMatchObject({ state: 'met', decidedAfter: 20, failed: null });
    expect(both.mean(1)).toBe(6);
  });

  test('keeps what it has decided, whatever comes later', () => {
    const one = decide(settings, () => -1);
    for (let more = 0; more < 1000; more++) one.add([100]);
    expect(one).toMatchObject({ state: 'missed', decidedAfter: 10, replications: 1010 });
    expect(one.mean(0)).toBeCloseTo(99, 0);
  });

  test('gives no bound before its first stage, and one that agrees with its verdict after', () => {
    const one = new FeasibilityTest(settings);
    for (let replication = 1; replication <= 9; replication++) one.add([replication % 2]);
    expect(one.atMost(0, 0.95)).toBeNull();
    one.add([0]);
    expect(one.atMost(0, 0.95)).toBeGreaterThan(0.5);
    expect(one.atLeast(0, 0.95)).toBeNull();
    const draw = normalDraws('bounds');
    for (let use = 0; use < 200; use++) {
      const decided = decide(settings, () => 2 * draw());
      if (decided.state === 'met')
        expect(decided.atLeast(0, 1 - settings.falseMet)).toBeGreaterThanOrEqual(-1);
      else expect(decided.atMost(0, 1 - settings.falseMissed)).toBeLessThanOrEqual(1);
    }
  });

  test('is refused for settings and values that cannot be', () => {
    expect(() => new FeasibilityTest({ ...settings, tolerances: [] })).toThrow('at least one constraint');
    expect(() => new FeasibilityTest({ ...settings, tolerances: [0] })).toThrow('tolerance must be above 0');
    expect(() => new FeasibilityTest({ ...settings, falseMet: 0 })).toThrow('false "met"');
    expect(() => new FeasibilityTest({ ...settings, falseMissed: 1 })).toThrow('false "missed"');
    expect(() => new FeasibilityTest({ ...settings, firstStage: { met: 20, missed: 1 } })).toThrow(
      'first stage',
    );
    const one = new FeasibilityTest(settings);
    expect(() => one.add([1, 2])).toThrow('1 values are needed');
    expect(() => one.add([Number.NaN])).toThrow('not finite');
    expect(() => one.stateOf(1)).toThrow('no constraint 1');
    expect(one.replications).toBe(0);
  });
});

describe('exactly one tolerance from the target the test errs no more often than it may', () => {
  const USES = 4000;
  const cases: readonly (readonly [string, FeasibilitySettings, number])[] = [
    ['with sides of their own', settings, 4],
    [
      'with equal sides',
      { tolerances: [1], falseMet: 0.05, falseMissed: 0.05, firstStage: { met: 10, missed: 10 } },
      4,
    ],
    ['with little noise', settings, 1.5],
    [
      'with first stages of two and three values',
      { tolerances: [1], falseMet: 0.2, falseMissed: 0.1, firstStage: { met: 2, missed: 3 } },
      2,
    ],
  ];
  test.each(cases)('%s', (name, own, deviation) => {
    const draw = normalDraws(`feasibility ${name}`);
    const share = (mean: number, wrong: 'met' | 'missed') => {
      let errors = 0;
      for (let use = 0; use < USES; use++) {
        if (decide(own, () => mean + deviation * draw()).state === wrong) errors++;
      }
      return errors;
    };
    const falseMet = share(-1, 'met');
    const falseMissed = share(1, 'missed');
    expect(falseMet).toBeLessThanOrEqual(mostErrors(USES, own.falseMet));
    expect(falseMissed).toBeLessThanOrEqual(mostErrors(USES, own.falseMissed));
    // A test that never errs would be one that takes far too long.
    expect(falseMet + falseMissed).toBeGreaterThan(0);
  });

  test('and a region that is too small by a third is found out', () => {
    const careless = { ...settings, tolerances: [1.5], falseMet: 0.05, firstStage: { met: 10, missed: 10 } };
    const draw = normalDraws('careless');
    let errors = 0;
    for (let use = 0; use < USES; use++) {
      if (decide(careless, () => -1 + 4 * draw()).state === 'met') errors++;
    }
    expect(errors).toBeGreaterThan(mostErrors(USES, 0.05));
  });

  test('and its bounds hold at whatever replication it stops', () => {
    const draw = normalDraws('feasibility bounds');
    let tooHigh = 0;
    let tooLow = 0;
    for (let use = 0; use < USES; use++) {
      const one = decide(settings, () => 4 * draw());
      while (one.replications < 20) one.add([4 * draw()]);
      if ((one.atLeast(0, 0.95) as number) > 0) tooHigh++;
      if ((one.atMost(0, 0.95) as number) < 0) tooLow++;
    }
    expect(tooHigh).toBeLessThanOrEqual(mostErrors(USES, 0.05));
    expect(tooLow).toBeLessThanOrEqual(mostErrors(USES, 0.05));
    expect(Math.min(tooHigh, tooLow)).toBeGreaterThan(0);
  });
});

test('A measure of zeros and ones is not called met because a first stage happened to see no variation.', () => {
  // Met in 17 of 20 periods where 18 are asked for: the first twenty replications see only ones in 4 of 100 uses.
  const periods = { ...settings, tolerances: [0.05], firstStage: { met: 20, missed: 20 } };
  const naive = new FeasibilityTest(periods);
  const careful = new FeasibilityTest({ ...periods, leastVariances: [0.9 * 0.1] });
  for (let replication = 0; replication < 20; replication++) {
    naive.add([0.1]);
    careful.add([0.1]);
  }
  expect([naive.state, careful.state]).toEqual(['met', 'undecided']);
});
