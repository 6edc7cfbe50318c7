import type { Lab } from '@buildweek/model';
import { type StaffPlan, staffAnswerSchema } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { attended, bench, lab, part, people } from '../fixture/lab.ts';
import { createInProcessExecutor } from '../in-process-executor.ts';
import { ObservedPlans } from '../plans/observed-plans.ts';
import { type ComparedStaff, compareStaff, type StaffPlanAsked } from './compare-staff.ts';
import { staffMeasures } from './staff-measures.ts';

const WEEKDAYS = [0, 1, 2, 3, 4];
const hours = (name: string, from: number, to: number) => ({
  name,
  weekly: WEEKDAYS.map((day) => ({ fromHour: day * 24 + from, toHour: day * 24 + to })),
  closedDays: [],
  extra: [],
});

/** Jobs come from Monday to Friday between 14:00 and 18:00 and are done by hand. */
function afternoonLab(groups: Lab['people']): Lab {
  const plain = lab(
    {
      calendars: [hours('day', 7, 15), hours('later', 11, 19), hours('both', 7, 19)],
      people: groups,
      parts: [part('lever', [bench('file', attended('files', 0.5))])],
    },
    30,
  );
  return {
    ...plain,
    demand: plain.demand.map((stream) => ({
      ...stream,
      arrivals: {
        kind: 'poisson',
        perWeek: 30,
        profile: WEEKDAYS.map((day) => ({ fromHour: day * 24 + 14, toHour: day * 24 + 18, weight: 1 })),
        growthPerMonth: 0,
        jobsPerArrival: { kind: 'fixed', value: 1 },
      },
    })),
  };
}

function plan(name: string, groups: Lab['people']): StaffPlanAsked {
  return {
    name,
    origin: name === 'today' ? 'today' : 'stated in the scenario',
    meaning: '',
    changes: [],
    lab: afternoonLab(groups),
    scenario: { text: '', hash: '' },
    costPerYear: null,
  };
}

const one = (calendar: string) => people('technicians', 1, ['files'], { calendar });
const PLANS = [
  plan('today', [one('day')]),
  plan('late start', [one('later')]),
  plan('the same under another name', [people('others', 1, ['files'], { calendar: 'later' })]),
  plan('two of us', [people('technicians', 2, ['files'])]),
  plan('all day long', [one('both')]),
];

async function compared(plans: readonly StaffPlanAsked[]): Promise<ComparedStaff> {
  const [today] = plans;
  if (today === undefined) throw new Error('There is no plan.');
  const measures = staffMeasures(today.lab);
  const observed = new ObservedPlans({
    measures: () => measures.all,
    template: { seed: '1', ignoredWeeks: 1, weeks: 4, capWeeks: 4, trace: false, queueWaits: false },
    executor: createInProcessExecutor(),
  });
  const answer = await compareStaff({
    plans,
    observed,
    measures,
    rules: { restHours: 11, hoursPerWeek: 48, daysInARow: 6, night: { fromHour: 23, toHour: 30 } },
    weeks: 4,
    replications: 30,
    level: 0.95,
    currency: null,
  });
  if (answer === null) throw new Error('Somebody stopped.');
  return answer;
}

function find(answer: ComparedStaff, name: string): StaffPlan {
  const found = answer.plans.find((one) => one.name === name);
  if (found === undefined) throw new Error(`There is no "${name}".`);
  return found;
}

describe('ways of staffing', () => {
  it('find that a later start helps a lab whose work comes in the afternoon', async () => {
    const answer = await compared(PLANS);
    expect(answer.decidedBy).toBe('nine of ten jobs within');
    expect(answer.best).toEqual({ name: 'late start', notToldApart: ['the same under another name'] });
    expect(answer.verdict[0]).toMatch(
      /^With the same hours, “late start” cuts the time within which nine of ten jobs are finished from \d/,
    );
    expect(answer.verdict[1]).toBe('As good as that, as far as can be told: “the same under another name”.');
    expect(answer.verdict.some((sentence) => sentence.includes('“all day long” (20 h a week more)'))).toBe(
      true,
    );
  });

  it('tell hours, rules and differences of each, with levels that hold for all at once', async () => {
    const answer = await compared(PLANS);
    expect(answer.plans.map(({ hoursAgainstToday }) => hoursAgainstToday)).toEqual([
      'the same',
      'the same',
      'the same',
      'more',
      'more',
    ]);
    expect(answer.differencesLevel).toBeCloseTo(1 - 0.05 / 4, 12);
    expect(find(answer, 'today').differences).toEqual([]);
    const same = find(answer, 'the same under another name');
    expect(same.againstBest?.outcome).toBe('no difference');
    expect(find(answer, 'all day long').breaches).toMatchObject([
      { person: 'technicians 1', rule: 'hours a week', found: 60, limit: 48, times: 4 },
    ]);
    expect(find(answer, 'late start').breaches).toEqual([]);
    for (const { waiting, waitingBySkill } of answer.plans)
      expect(waitingBySkill[0]?.byHourOfWeek).toEqual(waiting);
    expect(staffAnswerSchema.shape.plans.parse(answer.plans)).toEqual(answer.plans);
  });

  it('see jobs wait in the evening today, and hardly any with a late start', async () => {
    const answer = await compared(PLANS.slice(0, 2));
    const at17 = (name: string): number => find(answer, name).waiting[24 + 17] ?? 0;
    expect(at17('today')).toBeGreaterThan(2);
    expect(at17('late start')).toBeLessThan(1);
    const [, missing = ''] = answer.verdict;
    expect(missing).toMatch(/^Today most jobs wait for a person on .*; while nobody is in, on /);
  });

  it('say that nothing is better where nothing is', async () => {
    const answer = await compared([
      PLANS[0] as StaffPlanAsked,
      plan('other name', [people('others', 1, ['files'])]),
    ]);
    expect(answer.best).toBeNull();
    expect(answer.verdict[0]).toMatch(
      /^With the same hours, “other name” is not surely better than today: nine of ten jobs within /,
    );
  });
});
