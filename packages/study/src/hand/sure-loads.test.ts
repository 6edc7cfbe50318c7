import type { SendOutRule } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import { attended, bench, lab, part, people } from '../fixture/lab.ts';
import { loadWarnings } from '../words/warnings.ts';
import { handLoads } from './sure-loads.ts';

const RANGE = { fromWeek: 0, weeks: 13 };

function rule(always: boolean): SendOutRule {
  return {
    always,
    waitingJobsAbove: always ? null : 5,
    promiseAtRisk: false,
    leadTime: { kind: 'working days', days: { kind: 'constant', value: 4 }, cutOffHour: null },
  };
}

/** More than one person can do, all of it under one rule. */
function busy(sentOut: SendOutRule | null) {
  const plain = lab({
    people: [people('technicians', 1, ['all'])],
    parts: [part('lever', [bench('sand', attended('all', 1000))])],
  });
  return handLoads({ ...plain, demand: plain.demand.map((one) => ({ ...one, sentOut })) }, RANGE);
}

describe('handLoads', () => {
  it('counts for sure what is never sent out', () => {
    const { all, sure } = busy(null);
    expect(all[0]?.load).toBeGreaterThan(1);
    expect(sure).toEqual(all);
    expect(loadWarnings(sure)).toHaveLength(1);
  });

  it('shows what may be sent out, says so, and takes no queue for endless because of it', () => {
    const { all, sure } = busy(rule(false));
    expect(all[0]?.load).toBeGreaterThan(1);
    expect(all[0]?.note).toMatch(/ Jobs that may be sent out are counted as made here\.$/);
    expect(sure[0]?.load).toBe(0);
    expect(loadWarnings(sure)).toEqual([]);
  });

  it('leaves out what is always sent out', () => {
    const { all } = busy(rule(true));
    expect(all[0]?.load).toBe(0);
    expect(all[0]?.note).not.toContain('sent out');
  });
});
