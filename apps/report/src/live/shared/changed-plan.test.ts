import { changeScenario, readChanges } from '@buildweek/scenario';
import { describe, expect, test } from 'vitest';
import { SMALL_BASE } from '../fixture/small-base.ts';
import { changedPlan } from './changed-plan.ts';
import { controlsOf } from './controls.ts';
import { PlanReader } from './read-plan.ts';
import { AS_PLANNED, type ReaderState } from './reader-state.ts';

const reader = new PlanReader(SMALL_BASE);
const { plan } = reader;
if (plan.kind === 'problems') throw new Error(plan.problems[0]?.message);
const controls = controlsOf(plan, SMALL_BASE.text);

function changed(state: Partial<ReaderState>): ReturnType<typeof changedPlan> {
  if (plan.kind === 'problems') throw new Error();
  return changedPlan(reader, plan, SMALL_BASE.text, controls, { ...AS_PLANNED, ...state });
}

describe('What a reader may change', () => {
  test('goes as far as the scenario lets it, else from none to some more', () => {
    expect(controls.counts).toEqual([
      { id: 'people/hands', of: 'people', group: 'hands', present: 2, low: 1, high: 3, isStated: true },
      {
        id: 'machines/printer',
        of: 'machines',
        group: 'printer',
        present: 2,
        low: 0,
        high: 5,
        isStated: false,
      },
    ]);
    expect(controls.factors).toEqual([
      { id: 'demand', low: 40, high: 200, stated: [40, 130] },
      { id: 'failed builds', low: 50, high: 200, stated: null },
      { id: 'breakdowns', low: 50, high: 200, stated: null },
    ]);
    expect(controls.hours.map(({ name }) => name)).toContain('one of hands from 10:00');
    expect(controls.hours.map(({ name }) => name)).not.toContain('one more of hands');
  });

  test('comes to changes in words that make the same scenario anywhere', () => {
    const found = changed({
      counts: { 'people/hands': 3, 'machines/printer': 1 },
      factors: { demand: 150 },
      hours: 'one of hands from 10:00',
    });
    if (found.kind !== 'plan') throw new Error(JSON.stringify(found));
    expect(found.wordings).toEqual([
      'machines / printer / count: 1',
      'demand / ring / jobs: 30 per week',
      // One of the three who are there after the change comes later.
      'people / hands / count: 2',
      expect.stringMatching(/^people \/ late hands: \{ count: 1, hours: \{ mon-fri: 10:00-18:00 \}/),
    ]);
    expect(changeScenario(SMALL_BASE.text, readChanges(found.wordings.join('; ')))).toBe(found.text);
    expect(found.plan.lab.people.map(({ name, count }) => [name, count])).toEqual([
      ['late hands', 1],
      ['hands', 2],
    ]);
  });

  test('is refused in the words of the scenario when it makes no lab', () => {
    const found = changed({ counts: { 'machines/printer': 0 } });
    if (found.kind !== 'refused') throw new Error(found.kind);
    expect(found.reasons.join('\n')).toMatch(/^scenario\.yaml:8:\d+: error: The lab has none of "printer"/);
    expect(found.reasons.join('\n')).toContain('write: ');
  });

  test('is refused where the hours that were chosen need people who are not there', () => {
    const found = changed({ counts: { 'people/hands': 1 }, hours: 'one of hands from 10:00' });
    if (found.kind !== 'refused') throw new Error(found.kind);
    expect(found.reasons[0]).toContain('With these numbers of people there is no “one of hands from 10:00”.');
  });

  test('may be nothing', () => {
    expect(changed({}).kind).toBe('as planned');
  });
});
