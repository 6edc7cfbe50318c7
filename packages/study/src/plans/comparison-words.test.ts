import type { PlanMeasure } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { difference, estimate, measure } from '../fixture/plans.ts';
import { type PairFacts, pairSentence } from './comparison-words.ts';

const P90 = 'nine of ten jobs within';

function sentence(more: Partial<PairFacts>): string {
  return pairSentence({
    plan: 'three',
    against: 'as it is',
    before: [],
    after: [],
    differences: [],
    currency: 'EUR',
    ...more,
  });
}

/** One measure in both plans, the second less the first as given. */
function about(
  [name, unit, better]: readonly [string, PlanMeasure['unit'], PlanMeasure['better']],
  before: PlanMeasure['value'],
  after: PlanMeasure['value'],
  ...told: readonly [...Parameters<typeof difference>] | readonly []
): string {
  return sentence({
    before: [measure(name, before, { unit, better })],
    after: [measure(name, after, { unit, better })],
    differences: [
      told.length === 0
        ? difference(name, { kind: 'refused', reason: '' }, 'not compared')
        : difference(told[0], told[1], told[2]),
    ],
  });
}

const HOURS = [P90, 'hours', 'lower'] as const;

describe('the sentence on two plans', () => {
  it('says in days how much sooner nine of ten jobs are finished, with the interval of the difference', () => {
    expect(about(HOURS, estimate(144, 6), estimate(96, 6), P90, estimate(-48, 12), 'better')).toBe(
      '“three” against “as it is”: nine of ten jobs within 4.0 days instead of 6.0 days, 2.0 days (1.5 to 2.5) sooner.',
    );
  });

  it('says how much later, and in hours what is no day', () => {
    expect(about(HOURS, estimate(10, 1), estimate(12, 1), P90, estimate(2, 1), 'worse')).toBe(
      '“three” against “as it is”: nine of ten jobs within 12.0 hours instead of 10.0 hours, 2.0 hours (1.0 to 3.0) later.',
    );
  });

  it('gives the difference of two shares in percentage points', () => {
    const onTime = ['jobs on time', 'share', 'higher'] as const;
    expect(
      about(
        onTime,
        estimate(0.93, 0.01),
        estimate(0.71, 0.01),
        'jobs on time',
        estimate(-0.22, 0.03),
        'worse',
      ),
    ).toBe(
      '“three” against “as it is”: jobs on time 71 % instead of 93 %, 22 percentage points (19 to 25) less.',
    );
  });

  it('gives money in the currency of the scenario', () => {
    const cost = ['committed cost', 'money per year', 'lower'] as const;
    expect(about(cost, estimate(1000), estimate(1500), 'committed cost', estimate(500), 'worse')).toBe(
      '“three” against “as it is”: committed cost 1500 EUR a year instead of 1000 EUR a year, 500 EUR a year more.',
    );
  });

  it('tells lead times first, then rush, then promises, then costs, whatever the order of the measures', () => {
    const names = ['committed cost', 'jobs on time', 'nine of ten rush jobs within', P90];
    const told = sentence({
      before: names.map((name) => measure(name, estimate(10, 1))),
      after: names.map((name) => measure(name, estimate(12, 1))),
      differences: names.map((name) => difference(name, estimate(2, 1), 'worse')),
    });
    const places = [...names].reverse().map((name) => told.indexOf(name));
    expect(places).toEqual([...places].sort((one, other) => one - other));
    expect(places[0]).toBeGreaterThan(0);
  });

  it('says of what cannot be told apart how far apart it may be', () => {
    const told = sentence({
      before: [
        measure(P90, estimate(10, 5)),
        measure('committed cost', estimate(5), { unit: 'money per year' }),
      ],
      after: [
        measure(P90, estimate(11, 5)),
        measure('committed cost', estimate(6), { unit: 'money per year' }),
      ],
      differences: [
        difference(P90, estimate(1, 5), 'not told apart'),
        difference('committed cost', estimate(1), 'worse'),
      ],
    });
    expect(told).toBe(
      '“three” against “as it is”: no difference can be told in nine of ten jobs within (-4.0 to 6.0 hours); committed cost 6 EUR a year instead of 5 EUR a year, 1 EUR a year more.',
    );
  });

  it('says where only one of the two finishes nine of ten jobs', () => {
    const never = { kind: 'never', reason: 'In 3 of 40 replications it lies beyond the end.' } as const;
    expect(about(HOURS, estimate(96, 6), never)).toBe(
      '“three” against “as it is”: nine of ten jobs within no time that was played (before: 4.0 days).',
    );
    expect(about(HOURS, never, estimate(96, 6))).toBe(
      '“three” against “as it is”: nine of ten jobs within 4.0 days, before in no time that was played.',
    );
  });

  it('says when nothing differs at all, when nothing can be told, and when only other measures can', () => {
    const other = 'people at work';
    const of = (outcome: Parameters<typeof difference>[2]) =>
      sentence({
        before: [measure(other, estimate(1, 1))],
        after: [measure(other, estimate(1, 1))],
        differences: [difference(other, estimate(0, 1), outcome)],
      });
    expect(of('no difference')).toBe('“three” against “as it is”: nothing differs, in any replication.');
    expect(of('not told apart')).toBe(
      '“three” against “as it is”: no difference can be told with so many replications.',
    );
    expect(of('better')).toBe(
      '“three” against “as it is”: neither lead times nor promises can be told apart; other measures can.',
    );
  });
});
