import type { History } from '@buildweek/core';
import { type Estimate, type EstimateOrRefused, type Results, WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import {
  benchHours,
  HOUR,
  history,
  jobClass,
  machineHistory,
  peopleHistory,
  queue,
  WEEK,
} from '../fixture/history.ts';
import { attended, bench, lab, machine, part, people } from '../fixture/lab.ts';
import { type Measures, StudySums } from './study-sums.ts';

const testLab = lab({
  machines: [machine('printer')],
  people: [people('technicians', 2, ['all'])],
  parts: [part('lever', [bench('sand', attended('all', 1))])],
});

/** Two kinds of replication in turn, twenty of them: every figure is an average of the two. */
function measuresOf(even: Partial<History>, odd: Partial<History>, replications = 20): Measures {
  const histories = Array.from({ length: replications }, (_, index) =>
    history(index, index % 2 === 0 ? even : odd),
  );
  const [first] = histories;
  if (first === undefined) throw new Error('A study needs a replication.');
  const sums = new StudySums(testLab, first);
  for (const one of histories) sums.add(one);
  return sums.measures(0.95);
}

function given(estimate: EstimateOrRefused | undefined): Estimate {
  if (estimate?.kind !== 'estimate') throw new Error(`No estimate: ${JSON.stringify(estimate)}`);
  return estimate;
}

/** t for 19 degrees of freedom at 0.975: 2.093024 (published tables). */
const T_19 = 2.093024;

function jobsOf(measures: Pick<Results, 'jobs'>, part: string | null, priority: string) {
  return measures.jobs.find((job) => job.part === part && job.priority === priority);
}

describe('StudySums', () => {
  it('takes the mean lead time over jobs, and its interval over replications', () => {
    // Even: 3 jobs of together 30 h; odd: 1 job of 30 h. Mean 60 / 4 = 15 h, not the 20 h of a mean of means.
    const measures = measuresOf(
      { jobClasses: [jobClass('lever', false, [5, 10, 15]), jobClass('lever', true, [])] },
      { jobClasses: [jobClass('lever', false, [30]), jobClass('lever', true, [])] },
    );
    const mean = given(jobsOf(measures, null, 'all')?.meanLeadTime);
    expect(mean.value).toBeCloseTo(15, 10);
    // Residuals 30 − 15 × 3 = −15 and 30 − 15 = 15: Σ² = 20 × 225; error = sqrt(4500 / 19 / 20) / 2 jobs.
    expect(mean.high - mean.value).toBeCloseTo((T_19 * Math.sqrt(4500 / 19 / 20)) / 2, 5);
    expect(mean.replications).toBe(20);
  });

  it('pools percentiles over all jobs and refuses those with fewer than 10 jobs beyond them', () => {
    const measures = measuresOf(
      { jobClasses: [jobClass('lever', false, [5, 10, 15]), jobClass('lever', true, [])] },
      { jobClasses: [jobClass('lever', false, [30]), jobClass('lever', true, [])] },
    );
    // 40 jobs: ten each of 5, 10, 15 and 30 h.
    const percentiles = jobsOf(measures, null, 'all')?.percentiles ?? [];
    expect(percentiles.map(({ share }) => share)).toEqual([0.5, 0.8, 0.9, 0.95]);
    expect(given(percentiles[0]?.longRun).value).toBeCloseTo(10, 10);
    expect(percentiles[2]?.longRun).toMatchObject({ kind: 'refused' });
    expect(percentiles[2]?.longRun).toHaveProperty(
      'reason',
      expect.stringContaining('of 40 jobs there are 4'),
    );
  });

  it('gives rush and normal jobs apart where there are both, and together everywhere', () => {
    const classes = [jobClass('lever', false, [10, 20]), jobClass('lever', true, [4])];
    const measures = measuresOf({ jobClasses: classes }, { jobClasses: classes });
    expect(measures.jobs.map(({ part, priority, jobs }) => [part, priority, jobs])).toEqual([
      [null, 'all', 60],
      [null, 'normal', 40],
      [null, 'rush', 20],
      ['lever', 'all', 60],
      ['lever', 'normal', 40],
      ['lever', 'rush', 20],
    ]);
    expect(given(jobsOf(measures, 'lever', 'rush')?.meanLeadTime)).toMatchObject({
      value: 4,
      low: 4,
      high: 4,
    });
  });

  it('counts unfinished jobs as later than everything and gives no mean without them', () => {
    const classes = [
      jobClass('lever', false, [10], { arrived: 3, unfinished: 2 }),
      jobClass('lever', true, []),
    ];
    const all = jobsOf(measuresOf({ jobClasses: classes }, { jobClasses: classes }), null, 'all');
    expect(all).toMatchObject({ jobs: 60, unfinished: 40 });
    expect(all?.meanLeadTime).toMatchObject({
      kind: 'refused',
      reason: expect.stringContaining('40 of 60 jobs'),
    });
    expect(all?.percentiles[0]?.longRun.kind).toBe('never');
  });

  it('gives the share of promises kept over all jobs that have one', () => {
    const measures = measuresOf(
      {
        jobClasses: [
          jobClass('lever', false, [1, 2, 3, 4], { promised: 3, onTime: 3 }),
          jobClass('lever', true, []),
        ],
      },
      {
        jobClasses: [
          jobClass('lever', false, [1, 2], { promised: 1, onTime: 0 }),
          jobClass('lever', true, []),
        ],
      },
    );
    expect(given(jobsOf(measures, null, 'all')?.onTime).value).toBeCloseTo(0.75, 10);
    const none = [jobClass('lever', false, [1]), jobClass('lever', true, [])];
    expect(jobsOf(measuresOf({ jobClasses: none }, { jobClasses: none }), null, 'all')?.onTime).toEqual({
      kind: 'refused',
      reason: 'Nothing is promised for these jobs.',
    });
  });

  it('takes the length of a queue over time and the wait over those who came through', () => {
    const measures = measuresOf(
      { queues: [queue('printer', { area: WEEK, visits: 4, waitSum: 8 * HOUR })] },
      { queues: [queue('printer', { area: 3 * WEEK, visits: 1, waitSum: 7 * HOUR })] },
    );
    const [found] = measures.queues;
    expect(found?.meanLength.value).toBeCloseTo(2, 10);
    expect(found?.meanLength.high).toBeCloseTo(2 + T_19 * Math.sqrt(20 / 19 / 20), 5);
    expect(given(found?.meanWait).value).toBeCloseTo(3, 10);
    expect(found?.waitPercentiles).toEqual([]);
  });

  it('draws the hours of the week and the weeks with a band of their own at each point', () => {
    const hours = new Float64Array(168);
    hours[31] = 4;
    const measures = measuresOf(
      { queues: [queue('printer', { byHourOfWeek: hours, byWeek: Float64Array.of(2) })] },
      { queues: [queue('printer', { byHourOfWeek: new Float64Array(168), byWeek: Float64Array.of(4) })] },
    );
    const [found] = measures.queues;
    expect(found?.byHourOfWeek.value[31]).toBeCloseTo(2, 10);
    expect(found?.byHourOfWeek.high[30]).toBe(0);
    expect(found?.byWeek.value).toEqual([expect.closeTo(3, 10)]);
    expect(found?.byWeek.high[0]).toBeCloseTo(3 + T_19 * Math.sqrt(20 / 19 / 20), 5);
  });

  it('gives percentiles of waits when single waits were kept', () => {
    const waits = Float64Array.from({ length: 10 }, (_, index) => index * HOUR);
    const measures = measuresOf(
      { queues: [queue('printer', { waits })] },
      { queues: [queue('printer', { waits })] },
    );
    // 200 waits, 20 of each whole number of hours from 0 to 9: nine of ten are at most 8 h.
    expect(given(measures.queues[0]?.waitPercentiles[2]?.longRun).value).toBe(8);
  });

  it('books hours per finished job, and names only causes of waiting that occurred', () => {
    const measures = measuresOf(
      { partHours: [benchHours('lever', 3, 9, { shift: 6 })] },
      { partHours: [benchHours('lever', 1, 3, { shift: 10 })] },
    );
    const [found] = measures.hours;
    expect(found).toMatchObject({ part: 'lever', route: 'lever', process: null });
    const [step] = found?.steps ?? [];
    expect(step?.work.value).toBeCloseTo(3, 10);
    expect(step?.waits.map(({ cause, hours }) => [cause, hours.value])).toEqual([
      ['shift', expect.closeTo(4, 10)],
    ]);
  });

  it('has a step for what is made outside only where jobs were sent out', () => {
    const sentOut = (away: number) => ({
      ...benchHours('lever', 2, 6, {}),
      steps: [
        { stageIndex: 0, stage: 'sand', phase: 'work' as const, attended: true },
        { stageIndex: -1, stage: 'sent out', phase: 'outside' as const, attended: false },
      ],
      work: Float64Array.of(6 * HOUR, away * HOUR),
      waits: new Float64Array(2 * WAIT_CAUSES.length),
    });
    const phasesOf = (away: number) => {
      const hours = { partHours: [sentOut(away)] };
      return measuresOf(hours, hours).hours[0]?.steps.map(({ phase }) => phase);
    };
    expect(phasesOf(0)).toEqual(['work']);
    expect(phasesOf(50)).toEqual(['work', 'outside']);
  });

  it('leaves out a part of which no job was finished', () => {
    const hours = { partHours: [benchHours('lever', 0, 0, {})] };
    expect(measuresOf(hours, hours).hours).toEqual([]);
  });

  it('shares the time of a machine among its states, and counts builds, parts and fill', () => {
    const measures = measuresOf(
      { machines: [machineHistory('printer', { print: 84 }, { runs: 3, pieces: 12, fillSum: 2.4 })] },
      { machines: [machineHistory('printer', { print: 42 }, { runs: 1, pieces: 2, fillSum: 0.4 })] },
    );
    const [found] = measures.machines;
    const share = (name: string): number | undefined =>
      found?.states.find(({ state }) => state === name)?.share.value;
    expect(share('print')).toBeCloseTo(0.375, 10);
    expect(share('idle')).toBeCloseTo(0.625, 10);
    expect(found?.buildsPerWeek.value).toBeCloseTo(2, 10);
    expect(found?.partsPerWeek.value).toBeCloseTo(7, 10);
    expect(given(found?.meanFill).value).toBeCloseTo(0.7, 10);
  });

  it('counts work and other duties against the hours on duty, and overtime apart', () => {
    const group = peopleHistory(
      'technicians',
      [
        { work: 20, 'other duties': 4, idle: 16 },
        { work: 30, idle: 10, overtime: 2 },
      ],
      { stages: ['sand', 'build: unload'], timeByStage: Float64Array.of(50 * HOUR, 0) },
    );
    const [found] = measuresOf({ people: [group] }, { people: [group] }).people;
    // 54 of 80 hours on duty; overtime 2 of 336 hours of the group.
    expect(given(found?.busyShareOfDuty).value).toBeCloseTo(54 / 80, 10);
    expect(found?.states.find(({ state }) => state === 'overtime')?.share.value).toBeCloseTo(2 / 336, 10);
    expect(found?.hoursByStage).toEqual([
      { stage: 'sand', hoursPerWeek: expect.objectContaining({ value: expect.closeTo(50, 10) }) },
    ]);
  });

  it('gives nothing but zeros for a group of nobody', () => {
    const nobody = { people: [peopleHistory('technicians', [])] };
    const [found] = measuresOf(nobody, nobody).people;
    expect(found?.states.map(({ share }) => share.value)).toEqual([0, 0, 0, 0, 0]);
    expect(found?.busyShareOfDuty.kind).toBe('refused');
  });

  it('says which law was missed, and by how much at worst', () => {
    const laws = history(0).laws;
    const measures = measuresOf(
      { laws: { ...laws, jobArea: 3 * HOUR, jobStays: 5 * HOUR } },
      { laws: { ...laws, machineImbalance: 1 } },
    );
    const found = new Map(measures.checks.map((check) => [check.law, check]));
    expect(found.get("Little's law")).toEqual({
      law: "Little's law",
      replications: 20,
      largestDifferenceHours: 2,
      holds: false,
    });
    expect(found.get('balance of machine states')?.holds).toBe(false);
    expect(found.get('balance of person states')).toMatchObject({ largestDifferenceHours: 0, holds: true });
  });

  it('refuses to give results from fewer than 20 replications', () => {
    expect(() => measuresOf({ queues: [queue('printer')] }, { queues: [queue('printer')] }, 19)).toThrow(
      'at least 20 replications',
    );
  });
});
