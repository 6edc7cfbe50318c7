import { describe, expect, it } from 'vitest';
import { batch, lab, part, station } from '../fixture/lab.ts';
import { counted, estimate, measure, shareWithin, shown } from '../fixture/plans.ts';
import { createInProcessExecutor } from '../in-process-executor.ts';
import { type Observation, ObservedPlans } from './observed-plans.ts';
import { cheapestPlan, frontierOf, type PlanQuestion, variedWords } from './plan-answer.ts';
import { candidatePlans } from './plan-space.ts';
import { standardMeasures } from './standard-measures.ts';
import { targetMeasures } from './target-measures.ts';

const SERVERS = counted('stations', 'server', 1, 4);
const TARGET = shareWithin(0.8, {
  within: { kind: 'clock', hours: 16 },
  wording: '80 % of jobs within 16 h',
});

/** Jobs of 8 hours on the mean; with one server their queue grows without end. */
function question(): PlanQuestion {
  const takes = { distribution: { kind: 'exponential', mean: 8 }, typicalHours: 8 } as const;
  const one = lab(
    {
      stations: [station('server', { count: 2 })],
      parts: [part('customer', [batch('service', 'server', takes, { basis: 'job' })])],
    },
    30,
  );
  return {
    plans: candidatePlans([{ options: [], isToday: true, lab: one, economics: null }], [SERVERS]),
    targets: [TARGET],
    counts: [SERVERS],
    wordings: [],
    currency: null,
    firstTarget: standardMeasures([one]).length,
    level: 0.95,
  };
}

/** The search, which is stopped after so many replications that are not kept yet. */
async function search(kept: Map<string, Observation>, stopAfter = Number.POSITIVE_INFINITY) {
  const controller = new AbortController();
  let written = 0;
  const observed = new ObservedPlans({
    measures: (one) => [...standardMeasures([one]), ...targetMeasures(one, [TARGET])],
    template: { seed: '1', ignoredWeeks: 1, weeks: 4, capWeeks: 2, trace: false, queueWaits: false },
    executor: createInProcessExecutor(),
    stop: controller.signal,
    journal: {
      read: (plan, replication) => kept.get(`${plan} ${replication}`) ?? null,
      write: (plan, replication, observation) => {
        kept.set(`${plan} ${replication}`, observation);
        if (++written >= stopAfter) controller.abort();
      },
    },
  });
  const settings = { indifference: 0.05, alpha: 0.05, most: 200, weeks: 4 };
  return cheapestPlan(question(), observed, settings);
}

describe('the cheapest plan', () => {
  it('is found with everything around it, the same however often it is stopped', async () => {
    const whole = await search(new Map());
    expect(whole?.chosen).toBe('server 3');
    expect(whole?.question).toContain('no money is stated');
    const kept = new Map<string, Observation>();
    let stops = 0;
    let answer = await search(kept, 7);
    while (answer === null) {
      stops++;
      answer = await search(kept, 23);
    }
    expect(stops).toBeGreaterThan(3);
    expect(answer).toEqual(whole);
  });

  it('counts every plan: ruled out, looked at, or dearer than the answer', async () => {
    const found = await search(new Map());
    const ruledOut = found?.ruledOut.reduce((sum, { plans }) => sum + plans, 0) ?? 0;
    expect(ruledOut + (found?.looked.length ?? 0) + (found?.notLookedAt ?? 0)).toBe(found?.plans);
    expect(found?.looked.map(({ verdict, by }) => [verdict, by])).toEqual([
      ['missed', TARGET.wording],
      ['missed', TARGET.wording],
      ['met', ''],
    ]);
  });
});

describe('the frontier of cost against lead time', () => {
  const at = (name: string, cost: number | null, hours: number | null) =>
    shown(name, 'near miss', {
      committedCost: cost,
      measures: [
        measure(
          'nine of ten jobs within',
          hours === null ? { kind: 'never', reason: 'beyond the end' } : estimate(hours, 1),
        ),
      ],
    });

  it('holds the plans of which no cheaper or equally dear one is as fast, cheapest first', () => {
    const plans = [
      at('d', 40, 10),
      at('a', 10, 50),
      at('b', 20, 60),
      at('c', 30, 30),
      at('e', 30, 20),
      at('f', 50, 10),
    ];
    expect(frontierOf(plans)).toEqual(['a', 'e', 'd']);
  });

  it('leaves out what has no cost, or no time that is known', () => {
    expect(frontierOf([at('a', null, 5), at('b', 5, null), at('c', 6, 7)])).toEqual(['c']);
    expect(frontierOf([])).toEqual([]);
  });
});

describe('what may vary', () => {
  it('is told from where to where, with what is there today', () => {
    expect(variedWords(question())).toEqual([{ what: 'server', choices: '1 to 4', today: '2' }]);
  });

  it('is told of wordings with what is taken today', () => {
    const hours = {
      kind: 'wording',
      path: ['people', 'technicians', 'hours'],
      options: ['day', 'late'],
    } as const;
    const [today] = question().plans.filter(({ isToday }) => isToday);
    if (today === undefined) throw new Error('There is no today.');
    const plans = [{ ...today, choices: [{ what: 'technicians / hours', value: 'day' }] }];
    expect(variedWords({ ...question(), plans, counts: [], wordings: [hours] })).toEqual([
      { what: 'technicians / hours', choices: 'day or late', today: 'day' },
    ]);
  });
});
