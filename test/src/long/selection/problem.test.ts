import { mean, meanInterval, standardDeviation } from '@buildweek/statistics';
import { describe, expect, test } from 'vitest';
import { meanLeadTime } from './erlang-tandem.ts';
import { LeadTimeLaw } from './lead-time-law.ts';
import { JOBS, LATE, MEAN, PLANS, RIGHT, RIVAL, tandemOf, WITHIN_HOURS } from './problem.ts';
import { mostWrong } from './selection-suite.ts';
import { readPlans, Weeks } from './weeks.ts';

/** Share of jobs that take longer than they may, in the long run. */
const lateShares = PLANS.map((_, plan) =>
  new LeadTimeLaw(tandemOf(plan), WITHIN_HOURS).shareBeyond(WITHIN_HOURS),
);
const lateShare = (plan: number): number => lateShares[plan] ?? Number.NaN;

describe('the problem of two stations in a row', () => {
  test('has a right plan, and a rival that is cheaper, each exactly one tolerance from both targets', () => {
    expect(PLANS.map(({ name, cost }) => [name, cost])).toEqual([
      ['4+4', 28],
      ['5+4', 31],
      ['4+5', 32],
      ['5+5', 35],
      ['4+6', 36],
      ['5+6', 39],
    ]);
    expect(RIVAL).toBe(RIGHT - 1);
    expect(LATE.target).toBeCloseTo(0.05, 6);
    for (const [plan, side] of [
      [RIGHT, -1],
      [RIVAL, 1],
    ] as const) {
      expect(meanLeadTime(tandemOf(plan))).toBeCloseTo(MEAN.target + side * MEAN.tolerance, 4);
      expect(lateShare(plan)).toBeCloseTo(LATE.target + side * LATE.tolerance, 6);
    }
  });

  test('has no other cheaper plan that is less wrong', () => {
    for (let plan = 0; plan < RIVAL; plan++) {
      expect(meanLeadTime(tandemOf(plan))).toBeGreaterThan(MEAN.target + MEAN.tolerance);
      expect(lateShare(plan)).toBeGreaterThan(LATE.target + LATE.tolerance);
    }
  });

  // Four standard errors; they come to 1 % of the mean and 2.5 % of the share for the right plan.
  test('plays as its exact answer says, though it starts empty', async () => {
    const played = await new Weeks(readPlans(), 'exact').play(RIGHT, 0, 800);
    const hours = played.map((week) => week.hours / JOBS);
    const late = played.map((week) => week.late / JOBS);
    for (const [values, truth] of [
      [hours, meanLeadTime(tandemOf(RIGHT))],
      [late, lateShare(RIGHT)],
    ] as const) {
      const error = standardDeviation(values) / Math.sqrt(values.length);
      expect(Math.abs(mean(values) - truth)).toBeLessThan(4 * error);
      expect(error).toBeLessThan(0.025 * truth);
    }
    expect(
      meanInterval(
        played.map(({ jobs }) => jobs),
        0.999,
      ),
    ).toSatisfy(({ low, high }) => low < JOBS && JOBS < high);
    expect(WITHIN_HOURS).toBeGreaterThan(10);
  });

  test('is hard enough: whoever goes by the first ten replications alone picks wrongly far too often', async () => {
    const weeks = new Weeks(readPlans(), 'ten');
    const surplus = async (plan: number): Promise<number[]> =>
      (await weeks.play(plan, 0, 400)).map(({ late }) => LATE.target * JOBS - late);
    const [right, rival] = [await surplus(RIGHT), await surplus(RIVAL)];
    const uses = Array.from({ length: 40 }, (_, use) => [10 * use, 10 * use + 10] as const);
    const wrong = uses.filter(([from, to]) => {
      const isMet = (values: readonly number[]): boolean => mean(values.slice(from, to)) >= 0;
      return isMet(rival) || !isMet(right);
    }).length;
    // 11 of 40 against 7.
    expect(wrong).toBeGreaterThan(mostWrong(uses.length));
  });
});
