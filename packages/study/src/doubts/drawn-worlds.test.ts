import { regularizedBeta } from '@buildweek/numbers';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { queueLab } from '../fixture/lab.ts';
import { createInProcessExecutor } from '../in-process-executor.ts';
import { ObservedPlans } from '../plans/observed-plans.ts';
import { judgedMeasures } from '../targets/judged-targets.ts';
import type { ObservedTarget } from '../targets/observation.ts';
import { DrawnWorlds, drawnFactor } from './drawn-worlds.ts';
import { ranksOf } from './explained-shares.ts';
import { heldTargets } from './held-share.ts';

describe('a drawn factor', () => {
  it('stays in its range, and has the probability of PERT below it', () => {
    const u = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(u, u, (one, share) => {
        const range = { low: 0.6, typical: 0.6 + 0.9 * share, high: 1.5 };
        const factor = drawnFactor(range, one);
        expect(factor).toBeGreaterThanOrEqual(range.low);
        expect(factor).toBeLessThanOrEqual(range.high);
        const below = regularizedBeta((factor - 0.6) / 0.9, 1 + 4 * share, 1 + 4 * (1 - share));
        expect(below).toBeCloseTo(one, 6);
      }),
    );
  });
});

describe('drawn worlds', () => {
  const doubts = [
    { name: 'demand', about: { kind: 'demand', of: null }, low: 0.6, typical: 1, high: 1.35 },
    { name: 'times', about: { kind: 'work times', by: 'everything' }, low: 0.9, typical: 1, high: 1.2 },
  ] as const;

  it('are the same whenever they are asked for, and one doubt draws nothing from another', () => {
    const lab = queueLab(10, 8);
    const both = new DrawnWorlds(lab, doubts, 'a');
    expect(both.factorsOf(7)).toEqual(new DrawnWorlds(lab, doubts, 'a').factorsOf(7));
    expect(both.factorsOf(7)[0]).toBe(new DrawnWorlds(lab, doubts.slice(0, 1), 'a').factorsOf(7)[0]);
    expect(both.factorsOf(8)).not.toEqual(both.factorsOf(7));
    expect(both.factorsOf(7)).not.toEqual(new DrawnWorlds(lab, doubts, 'b').factorsOf(7));
  });

  it('meet a target as often as theory says for one server', { timeout: 60_000 }, async () => {
    // 100 jobs a week of 1.176 h each in the mean: a load of 0.7 as stated.
    const perWeek = 100;
    const service = (0.7 * 168) / perWeek;
    const lab = queueLab(perWeek, service);
    const within = 9;
    const asked = 0.9;
    const target: ObservedTarget = {
      kind: 'share within',
      wording: '90 % of jobs within 9 h',
      jobs: { part: null, rush: null },
      share: asked,
      within: { kind: 'clock', hours: within },
      meaning: { kind: 'long run' },
    };
    const plans = new ObservedPlans({
      measures: (of) => judgedMeasures(of, [target]),
      template: { seed: '1', ignoredWeeks: 4, weeks: 40, capWeeks: 4, trace: false, queueWaits: false },
      executor: createInProcessExecutor(),
    });
    const demand = doubts.slice(0, 1);
    const count = 100;
    const worlds = (await plans.observeWorlds(new DrawnWorlds(lab, demand, '1'), count)) ?? [];
    const { held } = heldTargets([target], worlds, worlds, 0.95);
    // M/M/1 (Gross and Harris): a job takes longer than t with probability exp(-(mu - lambda) t), so the target is met
    // up to the demand at which this is 10 %.
    const mu = 1 / service;
    const most = (mu + Math.log(1 - asked) / within) / (perWeek / 168);
    const [{ low, typical, high }] = demand as [(typeof doubts)[0]];
    const width = high - low;
    const truth = regularizedBeta(
      (most - low) / width,
      1 + (4 * (typical - low)) / width,
      1 + (4 * (high - typical)) / width,
    );
    expect(truth).toBeGreaterThan(0.2);
    expect(truth).toBeLessThan(0.8);
    // Three standard errors, and what chance in a period of 4,000 jobs blurs the border by.
    const bound = 3 * Math.sqrt((truth * (1 - truth)) / count) + 0.02;
    expect(Math.abs((held[0]?.inWorlds.value ?? 0) - truth)).toBeLessThan(bound);
  });
});

describe('ranks', () => {
  it('put what lies beyond everything last, and let equals share', () => {
    expect(ranksOf([3, Number.POSITIVE_INFINITY, 1, 3, Number.POSITIVE_INFINITY])).toEqual([
      2.5, 4.5, 1, 2.5, 4.5,
    ]);
  });
});
