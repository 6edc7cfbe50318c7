import type { ShownPlan } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { build, lab, machine, part } from '../fixture/lab.ts';
import { counted, shareWithin } from '../fixture/plans.ts';
import { toldMeasure, toldPlans } from '../fixture/told-plans.ts';
import { explainPlan } from './explain-plan.ts';
import { findPlan } from './find-plan.ts';
import { type CandidatePlan, candidatePlans } from './plan-space.ts';

const TARGET = shareWithin(0.9);
const RESIN = counted('machines', 'resin', 1, 9);
const PLANS = candidatePlans(
  [
    {
      options: [],
      isToday: true,
      lab: lab({ machines: [machine('resin', { count: 2 })] }),
      economics: null,
    },
  ],
  [RESIN],
);

interface Question {
  readonly plans?: readonly CandidatePlan[];
  /** Of 100 jobs so many are in time. */
  readonly inTime?: (machines: number) => number;
  readonly counts?: (typeof RESIN)[];
  readonly most?: number;
  /** So many jobs more or fewer in turns. */
  readonly luck?: number;
  readonly stop?: { aborted: boolean };
}

/** With each machine five jobs more are in time, and nine of ten take two hours less. */
async function explained({
  plans = PLANS,
  inTime = (machines) => 62.5 + 5 * machines,
  counts = [RESIN],
  most = 400,
  luck = 1,
  stop = { aborted: false },
}: Question = {}) {
  const measures = [toldMeasure('nine of ten jobs within'), toldMeasure(TARGET.wording, { unit: 'share' })];
  const { observed, asked } = toldPlans(
    measures,
    (plan, replication) => {
      const machines = Number(plan.split(' ')[1]);
      const turn = replication % 2 === 0 ? 1 : -1;
      return [30 - 2 * machines + turn, 1, inTime(machines) + luck * turn, 100];
    },
    stop,
  );
  const settings = { indifference: 0.02, alpha: 0.05, most, weeks: 4 };
  const search = await findPlan(plans, [TARGET], observed, 1, settings);
  if (search === null) throw new Error('Nobody stopped the search.');
  const playedToDecide = new Map(asked);
  const explain = () =>
    explainPlan(search, plans, counts, {
      observed,
      targets: [TARGET],
      firstTarget: 1,
      level: 0.95,
      weeks: 4,
    });
  return { explain, asked, playedToDecide };
}

async function shownOf(question: Question = {}): Promise<ShownPlan[]> {
  const shown = await (await explained(question)).explain();
  if (shown === null) throw new Error('Nobody stopped it.');
  return shown;
}

function roles(shown: readonly ShownPlan[]): string[] {
  return shown.map(({ name, role, verdict }) => `${name}: ${role}, ${verdict}`);
}

describe('what stands around the answer', () => {
  it('is the answer first, then today, near misses, one more and one fewer, each plan once by what matters most', async () => {
    expect(roles(await shownOf())).toEqual([
      'resin 6: chosen, met',
      'resin 2: today, missed',
      'resin 5: near miss, missed',
      'resin 4: near miss, missed',
      'resin 3: near miss, missed',
      'resin 7: one more, not tested',
      'resin 1: along the way, missed',
    ]);
  });

  it('tells those that missed narrowly from those that cost next less', async () => {
    const inTime = (machines: number) => (machines <= 3 ? 85 : machines <= 5 ? 60 : 95);
    const found = roles(await shownOf({ inTime }));
    expect(found.slice(0, 6)).toEqual([
      'resin 6: chosen, met',
      'resin 2: today, missed',
      'resin 1: near miss, missed',
      'resin 3: near miss, missed',
      'resin 4: next below, missed',
      'resin 5: next below, missed',
    ]);
    const none = roles(await shownOf({ inTime: (machines) => (machines <= 3 ? 85 : 60) }));
    expect(none.some((one) => one.includes('next below'))).toBe(false);
  });

  it('says of every plan why it is not the answer', async () => {
    expect((await shownOf()).map(({ why }) => why)).toEqual([
      '',
      `misses “${TARGET.wording}”`,
      `misses “${TARGET.wording}”`,
      `misses “${TARGET.wording}”`,
      `misses “${TARGET.wording}”`,
      'one more of “resin”',
      `misses “${TARGET.wording}”`,
    ]);
  });

  it('has values with intervals for all, and differences to the answer for all but the answer', async () => {
    const shown = await shownOf();
    for (const { name, targets, againstChosen, replications } of shown) {
      expect(replications).toBeGreaterThanOrEqual(40);
      const machines = Number(name.split(' ')[1]);
      expect(targets[0]?.value).toMatchObject({
        kind: 'estimate',
        value: expect.closeTo(0.625 + 0.05 * machines, 9),
      });
      const [difference] = againstChosen;
      if (machines === 6) expect(againstChosen).toEqual([]);
      else {
        // The same luck in both, so that nothing is left but what the machines do.
        expect(difference?.difference).toMatchObject({ value: expect.closeTo(12 - 2 * machines, 9) });
        expect(difference?.outcome).toBe(machines > 6 ? 'better' : 'worse');
      }
    }
  });

  it('plays no plan further than to be shown', async () => {
    const { explain, asked, playedToDecide } = await explained();
    const shown = (await explain()) ?? [];
    for (const { name } of shown) expect(asked.get(name)).toBe(Math.max(40, playedToDecide.get(name) ?? 0));
    expect([...asked.keys()].sort()).toEqual(shown.map(({ name }) => name).sort());
  });

  it('goes one step beyond the range upwards, and never below it', async () => {
    const few = candidatePlans(
      [{ options: [], isToday: true, lab: lab({ machines: [machine('resin')] }), economics: null }],
      [counted('machines', 'resin', 1, 1)],
    );
    const counts = [counted('machines', 'resin', 1, 1)];
    expect(roles(await shownOf({ plans: few, counts, inTime: () => 97 }))).toEqual([
      'resin 1: chosen, met',
      'resin 2: one more, not tested',
    ]);
  });

  it('tells that today is dearer than the answer', async () => {
    const plans = PLANS.map((plan) => ({ ...plan, isToday: plan.name === 'resin 9' }));
    const today = (await shownOf({ plans })).find(({ isToday }) => isToday);
    expect(today).toMatchObject({ role: 'today', verdict: 'not tested', why: 'is dearer than the answer' });
  });

  it('tells why today was ruled out before it was played', async () => {
    const none = lab({
      machines: [machine('resin', { count: 0 })],
      parts: [part('ring', [build('print', 'resin')])],
    });
    const from0 = counted('machines', 'resin', 0, 9);
    const plans = candidatePlans([{ options: [], isToday: true, lab: none, economics: null }], [from0]);
    const shown = await shownOf({ plans, counts: [from0] });
    expect(shown.find(({ isToday }) => isToday)).toMatchObject({
      role: 'today',
      verdict: 'missed',
      why: `has no “resin” for “ring”, so that “${TARGET.wording}” is out of reach`,
    });
  });

  it('shows plans that were left open, and says so', async () => {
    const shown = await shownOf({ most: 60, luck: 9, inTime: (machines) => (machines < 6 ? 89.9 : 97) });
    const open = shown.filter(({ role }) => role === 'undecided');
    expect(open.length).toBeGreaterThan(0);
    // With all the replications that were spent on them.
    expect(open[0]?.replications).toBe(60);
    expect(open[0]).toMatchObject({
      verdict: 'undecided',
      why: 'could neither be ruled out nor confirmed with so many replications',
    });
  });

  it('shows where nothing is good enough what one more would bring to the plan that comes closest', async () => {
    const shown = await shownOf({ inTime: (machines) => 40 + 5 * machines });
    expect(shown.some(({ role }) => role === 'chosen' || role === 'one fewer')).toBe(false);
    expect(shown.find(({ role }) => role === 'one more')?.name).toBe('resin 10');
    expect(shown.every(({ againstChosen }) => againstChosen.length === 0)).toBe(true);
  });

  it('is null when somebody stopped', async () => {
    const stop = { aborted: false };
    const { explain } = await explained({ stop });
    stop.aborted = true;
    expect(await explain()).toBeNull();
  });
});
