import type { LoggedJob } from '@buildweek/records';
import { describe, expect, it } from 'vitest';
import { civil, logged } from '../fixture/logged.ts';
import type { JudgedWeeks } from './judged-weeks.ts';
import { asLogged, observe } from './observation.ts';
import type { PlayedJob } from './played-jobs.ts';

const MONDAY = civil('2026-03-02T00:00');
const HOUR = 3_600_000;
const WEEK = 168 * HOUR;
const WEEKS: JudgedWeeks = { playedFrom: MONDAY - WEEK, from: MONDAY, to: MONDAY + 2 * WEEK, weeks: 2 };

function job(asked: number, more: Partial<LoggedJob> = {}, isJudged = true): PlayedJob {
  const one = logged(MONDAY + asked * HOUR, null, more);
  return { logged: one, stream: 0, part: one.part, enters: 0, isJudged };
}

/** Hours since the first judged Monday. */
function observed(jobs: readonly PlayedJob[], ends: readonly number[]) {
  return observe(
    jobs,
    ends.map((end) => MONDAY + end * HOUR),
    WEEKS,
    ['lever', 'ring'],
  );
}

describe('observe', () => {
  it('counts what is finished in each judged week, whenever it came', () => {
    const { all, parts } = observed(
      [job(-50), job(-50), job(10, { part: 'ring' }), job(170)],
      [-1, 0, 167, 400],
    );
    expect([...all.finished]).toEqual([2, 0]);
    expect(parts.map(({ finished }) => [...finished])).toEqual([
      [1, 0],
      [1, 0],
    ]);
  });

  it('averages the jobs in the lab over each week, clipped to the judged weeks', () => {
    // 84 h of the first week; the second week whole, because it never ends.
    const { all } = observed([job(-10), job(168)], [84, Number.POSITIVE_INFINITY]);
    expect([...all.inLab]).toEqual([0.5, 1]);
  });

  it('spreads a stay over the weeks that it touches', () => {
    const { all } = observed([job(126)], [210]);
    expect([...all.inLab]).toEqual([0.25, 0.25]);
  });

  it('averages lead times over the jobs that came in the week; what is open counts to the end', () => {
    const { all } = observed([job(0), job(100), job(326), job(-5)], [10, 130, Number.POSITIVE_INFINITY, 3]);
    expect([...all.leadByWeek]).toEqual([20, 10]);
    expect(all.jobs).toBe(3);
    expect(all.meanLead).toBeCloseTo(50 / 3, 12);
  });

  it('has no lead time for a week in which no job came', () => {
    expect([...observed([job(3)], [5]).all.leadByWeek]).toEqual([2, Number.NaN]);
  });

  it('judges promises that end in the judged weeks alone', () => {
    const promised = (hour: number): Partial<LoggedJob> => ({ promised: MONDAY + hour * HOUR });
    const jobs = [job(1, promised(20)), job(1, promised(20)), job(300, promised(400)), job(1)];
    const { all } = observed(jobs, [20, 21, 350, 500]);
    expect([all.promised, all.onTime]).toEqual([2, 0.5]);
  });

  it('leaves out jobs of which the log does not know the finish', () => {
    expect(observed([job(1, {}, false), job(2)], [50, 6]).all).toMatchObject({ jobs: 1, meanLead: 4 });
  });

  it('gives no 90 % point of fewer than ten jobs', () => {
    const ends = Array.from({ length: 10 }, (_, index) => 1 + index);
    expect(
      observed(
        ends.slice(1).map(() => job(0)),
        ends.slice(1),
      ).all.p90,
    ).toBeNull();
    expect(
      observed(
        ends.map(() => job(0)),
        ends,
      ).all.p90,
    ).toBeCloseTo(9.1, 12);
  });
});

describe('asLogged', () => {
  it('is the last minute of the day where the log tells no hour, and never for what does not end', () => {
    const end = civil('2026-03-03T09:30');
    expect(asLogged(end, true)).toBe(end);
    expect(asLogged(end, false)).toBe(civil('2026-03-03T23:59'));
    expect(asLogged(Number.POSITIVE_INFINITY, false)).toBe(Number.POSITIVE_INFINITY);
  });
});
