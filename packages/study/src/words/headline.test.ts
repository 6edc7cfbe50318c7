import type { Band, Estimate, JobClass } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import type { GroupUse } from '../reduce/group-use-sums.ts';
import { type HeadlineFacts, headlineOf } from './headline.ts';

function estimate(value: number, half = value / 20): Estimate {
  return { kind: 'estimate', value, low: value - half, high: value + half, level: 0.95, replications: 100 };
}

function jobs(priority: JobClass['priority'], ninetieth: number): JobClass {
  return {
    part: null,
    priority,
    jobs: 1000,
    unfinished: 0,
    meanLeadTime: estimate(ninetieth / 2),
    standardDeviationOfLeadTime: estimate(10),
    percentiles: [
      {
        share: 0.9,
        longRun: estimate(ninetieth),
        onePeriod: {
          kind: 'prediction',
          low: ninetieth - 12,
          high: ninetieth + 24,
          level: 0.95,
          replications: 100,
        },
      },
    ],
    onTime: estimate(0.93, 0.01),
    onTimeOnePeriod: { kind: 'prediction', low: 0.85, high: 0.98, level: 0.95, replications: 100 },
  };
}

function use(name: string, kind: GroupUse['kind'], atWork: number, waiting: number): GroupUse {
  return {
    name,
    kind,
    atWork: estimate(atWork, 0.01),
    waitingForPeople: kind === 'people' ? null : estimate(waiting, 0.01),
    held: estimate(atWork + waiting, 0.01),
  };
}

function weeks(value: readonly number[]): Band {
  return {
    value: [...value],
    low: value.map((one) => one - 5),
    high: value.map((one) => one + 5),
    level: 0.95,
    replications: 100,
  };
}

const facts: HeadlineFacts = {
  targets: [],
  jobs: [jobs('all', 96), jobs('normal', 100), jobs('rush', 72)],
  uses: [use('resin washers', 'station', 0.9, 0.02), use('technicians', 'people', 0.7, 0)],
  hours: [
    { what: 'printing', hours: estimate(12) },
    { what: 'all other stages', hours: estimate(6) },
    { what: 'waiting', cause: 'shift', hours: estimate(10) },
    { what: 'waiting', cause: 'person', hours: estimate(20) },
    { what: 'waiting', cause: 'carrier', hours: estimate(0.9) },
  ],
  loads: [],
  sentOut: [],
  run: { weeks: 13, level: 0.95 },
  jobsInLab: weeks(Array.from({ length: 13 }, () => 40)),
  pilotSettles: true,
};

describe('headlineOf', () => {
  it('says first what nine of ten rush and normal jobs keep, and what the bottleneck is', () => {
    expect(headlineOf(facts)[0]).toBe(
      'Nine of ten rush jobs are finished within 3.0 days (2.9 to 3.1), and nine of ten normal jobs are finished within 4.2 days (4.0 to 4.4); the bottleneck is “resin washers”, at work 90 % (89 to 91) of the time.',
    );
  });

  it('says how much is sent out, when it is much', () => {
    const rows = (share: number) => [
      {
        part: null,
        jobs: 100,
        sentOut: 100 * share,
        share: estimate(share, 0.01),
        jobsPerWeek: estimate(4),
        partsPerWeek: estimate(20, 1),
      },
    ];
    expect(headlineOf({ ...facts, sentOut: rows(0.25) })).toContain(
      '25 % (24 to 26) of all jobs are sent out, 20 (19 to 21) parts a week; the lead times above count them in.',
    );
    expect(headlineOf({ ...facts, sentOut: rows(0.09) })).toEqual(headlineOf(facts));
  });

  it('says before any lead time that the lab does not keep up, where the jobs in it grow from the first to the last weeks', () => {
    const jobsInLab = weeks([70, 74, 80, 85, 90, 92, 93, 108, 121, 123, 125, 127, 130]);
    expect(headlineOf({ ...facts, jobsInLab })[0]).toBe(
      'The lab does not keep up: jobs in it grow from 75 (70 to 80) to 127 (122 to 132) in 13 weeks; the lead times below depend on when one looks and are no lasting figures.',
    );
    expect(headlineOf({ ...facts, jobsInLab })[1]).toMatch(/^Nine of ten rush jobs/);
  });

  it('takes a bump after closed days for no growth', () => {
    const jobsInLab = weeks([17, 18, 18, 20, 59, 44, 31, 28, 28, 22, 19, 18, 18]);
    expect(headlineOf({ ...facts, jobsInLab })[0]).toMatch(/^Nine of ten rush jobs/);
  });

  it('says before any lead time that it is not certain whether the lab settles, where its pilot did not', () => {
    expect(headlineOf({ ...facts, pilotSettles: false })[0]).toMatch(
      /^It is not certain that the lab keeps up/,
    );
  });

  it('says what any one quarter may bring', () => {
    expect(headlineOf(facts)[1]).toBe(
      'In any one quarter that figure may come out anywhere from 2.5 to 4.0 days for rush jobs, and from 3.7 to 5.2 days for normal jobs; 95 of 100 do.',
    );
    expect(headlineOf({ ...facts, run: { weeks: 6, level: 0.9 } })[1]).toMatch(
      /^In any one period of 6 weeks .*; 90 of 100 do\.$/,
    );
  });

  it('says how many promises are kept', () => {
    expect(headlineOf(facts)[2]).toBe(
      '93 % (92 to 94) of rush jobs with a promise keep it; in any one quarter 85 to 98 %.',
    );
  });

  it('says where the hours of a job go, largest cause of waiting first, and gathers what hardly counts, so that the parts add up', () => {
    expect(headlineOf(facts).at(-1)).toBe(
      'Of the 2.0 days (1.9 to 2.1) of an average job: printing 0.50 (0.48 to 0.53); all other stages 0.25 (0.24 to 0.26); waiting for a person 0.83 (0.79 to 0.88); waiting for a shift to begin 0.42 (0.40 to 0.44); other waits 0.04.',
    );
  });

  it('names machines that stand full at night when nothing is at work nearly always', () => {
    const uses = [use('printers', 'machine', 0.3, 0.6), use('technicians', 'people', 0.5, 0)];
    expect(headlineOf({ ...facts, uses })[0]).toContain(
      'the bottleneck is “printers”, taken up 90 % (89 to 91) of the time, of all hours 60 % (59 to 61) waiting for people to start or empty it.',
    );
  });

  it('names no bottleneck, however busy something is, where promises are kept', () => {
    const kept = facts.jobs.map((one) => ({ ...one, onTime: estimate(0.97, 0.01) }));
    expect(headlineOf({ ...facts, jobs: kept })[0]).toContain(
      '; the busiest is “resin washers”, at work 90 % (89 to 91) of the time.',
    );
  });

  it('tells all lead times in hours where an average job takes less than a day', () => {
    const quick = [jobs('all', 40), jobs('normal', 60)];
    expect(headlineOf({ ...facts, jobs: quick })[0]).toContain('within 60.0 hours (57.0 to 63.0)');
  });

  it('names no bottleneck where there is none', () => {
    const uses = [use('printers', 'machine', 0.3, 0.1), use('technicians', 'people', 0.5, 0)];
    expect(headlineOf({ ...facts, uses })[0]).toContain(
      'nothing is worked to its limit, and the busiest, “technicians”, is at work 50 % (49 to 51) of the hours on duty.',
    );
  });

  it('gives no number where the percentile is refused, but the reason', () => {
    const all = jobs('all', 96);
    const refused = { kind: 'refused', reason: 'There are too few jobs.' } as const;
    const few = {
      ...all,
      percentiles: [{ share: 0.9, longRun: refused, onePeriod: refused }],
      onTime: refused,
    };
    expect(headlineOf({ ...facts, jobs: [few] }).slice(0, 2)).toEqual([
      'No lead time can be given that nine of ten jobs keep. There are too few jobs.',
      'The bottleneck is “resin washers”, at work 90 % (89 to 91) of the time.',
    ]);
  });
});
