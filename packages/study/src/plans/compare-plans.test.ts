import { describe, expect, it } from 'vitest';
import { queueLab } from '../fixture/lab.ts';
import { toldMeasure, toldPlans } from '../fixture/told-plans.ts';
import { comparePlans } from './compare-plans.ts';
import type { Plan } from './plan.ts';

const LAB = queueLab();
const PLANS: readonly Plan[] = ['base', 'fast', 'same'].map((name) => ({ name, lab: LAB }));
const MEASURES = [
  toldMeasure('nine of ten jobs within'),
  toldMeasure('jobs on time', { unit: 'share', better: 'higher' }),
  toldMeasure('people at work', { unit: 'share', better: 'neither' }),
  toldMeasure('jobs in the lab', { unit: 'jobs' }),
];

/** “fast” is two hours faster and keeps five points fewer promises; its people work more. */
function told(stop?: { readonly aborted: boolean }) {
  return toldPlans(
    MEASURES,
    (plan, replication) => {
      const luck = ((replication * 7) % 11) - 5;
      const own = ((replication * 5) % 7) - 3;
      const isFast = plan === 'fast';
      return [
        20 + luck - (isFast ? 2 - own / 10 : 0),
        1,
        80 + luck - (isFast ? 5 - own / 10 : 0),
        100,
        50 + (isFast ? 5 + own / 10 : 0),
        100,
        // What differs by luck alone.
        10 + (isFast ? own : luck),
        1,
      ];
    },
    stop,
  );
}

async function compared() {
  const found = await comparePlans(PLANS, told().observed, 40, 0.95, null);
  if (found === null) throw new Error('Nobody stopped it.');
  return found;
}

describe('plans that are compared', () => {
  it('are held against the first, measure by measure, and judged by which way is better', async () => {
    const { pairs } = await compared();
    expect(pairs.map(({ plan, against }) => [plan, against])).toEqual([
      ['fast', 'base'],
      ['same', 'base'],
      ['same', 'fast'],
    ]);
    expect(pairs[0]?.differences.map(({ measure, outcome }) => `${measure}: ${outcome}`)).toEqual([
      'nine of ten jobs within: better',
      'jobs on time: worse',
      'people at work: more',
      'jobs in the lab: not told apart',
    ]);
    expect(new Set(pairs[1]?.differences.map(({ outcome }) => outcome))).toEqual(new Set(['no difference']));
  });

  it('are held against each other too, so that two changes can be set side by side', async () => {
    const { pairs } = await compared();
    const [, asBase, against] = pairs;
    expect(asBase?.against).toBe('base');
    // “same” is “base”, so that it loses to “fast” what “fast” gains on “base”.
    for (const [index, gained] of (pairs[0]?.differences ?? []).entries()) {
      const lost = against?.differences[index]?.difference;
      if (gained.difference.kind !== 'estimate' || lost?.kind !== 'estimate') throw new Error('No estimate.');
      expect(lost.value).toBeCloseTo(-gained.difference.value, 9);
    }
  });

  it('are held against the first alone where they are many', async () => {
    const many = [...PLANS, ...['c', 'd'].map((name) => ({ ...(PLANS[0] as Plan), name }))];
    const found = await comparePlans(many, told().observed, 40, 0.95, null);
    expect(found?.pairs.map(({ against }) => against)).toEqual(['base', 'base', 'base', 'base']);
  });

  it('share the error of the whole answer among all differences', async () => {
    // Four measures of three pairs: 0.05 / 12 each.
    const { differencesLevel, pairs, measures } = await compared();
    expect(differencesLevel).toBeCloseTo(1 - 0.05 / 12, 12);
    expect(pairs[0]?.differences[0]?.difference).toMatchObject({ level: differencesLevel, replications: 40 });
    expect(measures[0]?.[0]?.value).toMatchObject({ level: 0.95 });
  });

  it('say what the same random numbers save, and nothing where nothing differs', async () => {
    const { pairs } = await compared();
    expect(pairs[0]?.differences[0]?.gain).toBeGreaterThan(50);
    expect(pairs[1]?.differences[0]?.gain).toBeNull();
  });

  it('end in a sentence each', async () => {
    const { pairs } = await compared();
    expect(pairs[0]?.sentence).toMatch(
      /^“fast” against “base”: nine of ten jobs within .* sooner; jobs on time .* less\.$/,
    );
    expect(pairs[1]?.sentence).toBe('“same” against “base”: nothing differs, in any replication.');
  });

  it('are null when somebody stopped, and refused when there is only one', async () => {
    expect(await comparePlans(PLANS, told({ aborted: true }).observed, 40, 0.95, null)).toBeNull();
    await expect(comparePlans(PLANS.slice(0, 1), told().observed, 40, 0.95, null)).rejects.toThrow(
      RangeError,
    );
  });
});
