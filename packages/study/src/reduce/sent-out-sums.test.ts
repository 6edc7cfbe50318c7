import type { SendOutRule } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { benchHours, history, jobClass } from '../fixture/history.ts';
import { attended, bench, lab, part } from '../fixture/lab.ts';
import { SentOutSums } from './sent-out-sums.ts';

const ALWAYS: SendOutRule = {
  always: true,
  waitingJobsAbove: null,
  promiseAtRisk: false,
  leadTime: { kind: 'working days', days: { kind: 'constant', value: 3 }, cutOffHour: null },
};

function labWith(rules: Record<string, SendOutRule | null>) {
  const names = Object.keys(rules);
  const plain = lab({ parts: names.map((name) => part(name, [bench('sand', attended('all', 1))])) });
  return { ...plain, demand: plain.demand.map((one) => ({ ...one, sentOut: rules[one.part] ?? null })) };
}

/** A week in which ten levers arrive, of which two are cancelled and some go out, and four rings. */
function week(replication: number, sentOut: number) {
  return history(replication, {
    jobClasses: [
      jobClass('lever', false, [1], { arrived: 10, cancelled: 2, sentOut }),
      jobClass('ring', false, [1], { arrived: 4 }),
    ],
    partHours: [
      { ...benchHours('lever', 1, 1, {}), sentOutJobs: sentOut, sentOutPieces: 3 * sentOut },
      benchHours('ring', 1, 1, {}),
    ],
  });
}

describe('SentOutSums', () => {
  it('gives the share of jobs that go out, of all and of each part that may, those cancelled left out', () => {
    const sums = new SentOutSums(labWith({ lever: ALWAYS, ring: null }));
    for (let replication = 0; replication < 20; replication++) {
      sums.add(week(replication, replication % 2 === 0 ? 1 : 3));
    }
    const [all, lever, ...others] = sums.results(0.95);
    expect(others).toEqual([]);
    expect(all).toMatchObject({ part: null, jobs: 240, sentOut: 40 });
    expect(lever).toMatchObject({ part: 'lever', jobs: 160, sentOut: 40 });
    // 2 of 12, and 2 of 8; standard deviation over replications sqrt(20 / 19) jobs, t of 19 degrees 2.093024.
    const half = (2.093024 * Math.sqrt(20 / 19)) / Math.sqrt(20);
    expect(all?.share).toMatchObject({ value: expect.closeTo(1 / 6, 10) });
    expect(lever?.share).toMatchObject({
      value: expect.closeTo(0.25, 10),
      low: expect.closeTo(0.25 - half / 8, 5),
      high: expect.closeTo(0.25 + half / 8, 5),
    });
    expect(all?.jobsPerWeek.value).toBeCloseTo(2, 10);
    expect(lever?.partsPerWeek.value).toBeCloseTo(6, 10);
  });

  it('says nothing where no rule sends anything out', () => {
    const sums = new SentOutSums(labWith({ lever: null, ring: null }));
    sums.add(week(0, 0));
    expect(sums.results(0.95)).toEqual([]);
  });
});
