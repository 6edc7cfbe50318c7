import type { Target } from '@buildweek/model';
import type { TargetResult } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { economics, equipmentCost } from '../fixture/economics.ts';
import { benchHours, history } from '../fixture/history.ts';
import { attended, bench, lab, machine, part } from '../fixture/lab.ts';
import { committedCostPerYear } from '../money/committed-cost.ts';
import { knownCost } from './known-budget.ts';
import { observeTarget } from './observation.ts';
import { TargetSums } from './target-sums.ts';

/** Three machines of which one is owned; parts of 2 each in material; 5,218 a year of other costs, 100 a week. */
const testLab = lab({
  machines: [machine('resin', { count: 3 })],
  parts: [part('sign', [bench('sand', attended('hands', 1))])],
});
const costs = economics({
  currency: 'EUR',
  equipment: [equipmentCost('resin', { price: 3000, yearlyCost: 0, owned: 1 })],
  parts: [{ part: 'sign', material: 2, outside: null }],
  otherPerYear: (100 * 365.25) / 7,
});

/** A week in which so many signs were made. */
function week(replication: number, pieces: number) {
  return history(replication, {
    weeks: {
      arrivedJobs: new Float64Array(1),
      finishedJobs: new Float64Array(1),
      finishedParts: Float64Array.of(pieces),
      jobsInLab: new Float64Array(1),
      promisedJobs: new Float64Array(1),
      onTimeJobs: new Float64Array(1),
    },
    partHours: [{ ...benchHours('sign', pieces, 0, {}), madePieces: pieces, madeJobs: pieces }],
  });
}

/** Costs of a week that do not depend on what is made. */
const fixedPerWeek = (committedCostPerYear(testLab, costs) * 7) / 365.25;

function judged(target: Target, pieces: readonly number[]): TargetResult {
  const sums = new TargetSums(testLab, [target], costs);
  for (const [replication, made] of pieces.entries()) sums.add(week(replication, made));
  const [result] = sums.results(13, 0.95);
  if (result === undefined) throw new Error('There is no target.');
  return result;
}

describe('a budget', () => {
  it('is held against what has to be bought beyond what is owned, or against what a year costs', () => {
    expect(knownCost(testLab, { of: 'purchases' }, costs)).toBe(6000);
    expect(knownCost(testLab, { of: 'year' }, costs)).toBe(committedCostPerYear(testLab, costs));
  });

  it.each([
    [6000, 'met'],
    [5999, 'missed'],
  ] as const)('of %d is %s, and needs no confidence', (atMost, verdict) => {
    const target: Target = { kind: 'budget', wording: 'as written', of: 'purchases', atMost };
    expect(
      judged(
        target,
        Array.from({ length: 20 }, () => 5),
      ),
    ).toMatchObject({
      wording: 'as written',
      kind: 'budget',
      currency: 'EUR',
      bound: 'at most',
      asked: atMost,
      found: { kind: 'known', value: 6000 },
      periods: null,
      verdict,
      confidence: null,
    });
  });
});

describe('the cost per part', () => {
  const target = (atMost: number): Target => ({ kind: 'cost per part', wording: 'as written', atMost });

  it('is all that the lab costs over all finished parts', () => {
    const observed = observeTarget(
      testLab,
      { kind: 'cost per part', wording: '', atMost: 40 },
      week(0, 10),
      costs,
    );
    expect(observed.numerator).toBeCloseTo(fixedPerWeek + 2 * 10, 8);
    expect(observed.denominator).toBe(10);
    expect(observed.value).toBeCloseTo(40 * 10 - fixedPerWeek - 2 * 10, 8);
    expect(() =>
      observeTarget(testLab, { kind: 'cost per part', wording: '', atMost: 40 }, week(0, 1)),
    ).toThrow('needs to know what things cost');
  });

  it('is judged by its mean over all parts, not over periods', () => {
    const pieces = Array.from({ length: 40 }, (_, index) => (index % 2 === 0 ? 4 : 16));
    const mean = 2 + fixedPerWeek / 10;
    const found = judged(target(mean), pieces);
    expect(found).toMatchObject({
      kind: 'cost per part',
      currency: 'EUR',
      bound: 'at most',
      found: { kind: 'estimate', value: expect.closeTo(mean, 8), replications: 40 },
      verdict: 'not decided',
    });
    expect(found.confidence?.met).toBeCloseTo(0.5, 6);
    expect(judged(target(1.5 * mean), pieces).verdict).toBe('met');
    expect(judged(target(0.6 * mean), pieces).verdict).toBe('missed');
  });

  it('of nothing is not decided', () => {
    expect(
      judged(
        target(12),
        Array.from({ length: 20 }, () => 0),
      ),
    ).toMatchObject({
      verdict: 'not decided',
      found: { kind: 'refused', reason: 'No part was finished.' },
    });
  });
});
