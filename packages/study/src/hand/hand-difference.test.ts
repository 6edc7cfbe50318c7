import type { Lab, StudySettings } from '@buildweek/model';
import type { JobClass, PartHours, WaitCause } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { attended, bench, lab, part, people, queueLab } from '../fixture/lab.ts';
import { createInProcessExecutor } from '../in-process-executor.ts';
import { runStudy, type StudyResults } from '../run-study.ts';
import { withDifferences } from './hand-difference.ts';
import type { PartEstimate } from './lead-time/hand-lead-times.ts';

const settings: StudySettings = {
  seed: 'hand',
  weeks: 13,
  ignoredWeeks: 4,
  capWeeks: 8,
  replications: 20,
  precision: null,
  replicationLimit: 20,
  level: 0.95,
};

async function played(of: Lab): Promise<StudyResults> {
  const outcome = await runStudy(of, settings, createInProcessExecutor());
  if (outcome.kind === 'too few') throw new Error(outcome.reason);
  return outcome.results;
}

function estimate(value: number) {
  return {
    kind: 'estimate',
    value,
    low: 0.95 * value,
    high: 1.05 * value,
    level: 0.95,
    replications: 20,
  } as const;
}

/** What a simulation of one part might have found: hours of work, and of waiting by cause. */
function found(work: number, waits: Readonly<Partial<Record<WaitCause, number>>>) {
  const causes = Object.entries(waits) as [WaitCause, number][];
  const mean = causes.reduce((sum, [, hours]) => sum + hours, work);
  const refused = { kind: 'refused', reason: 'not asked' } as const;
  const classOf = (part: string | null): JobClass => ({
    part,
    priority: 'all',
    jobs: 1000,
    unfinished: 0,
    meanLeadTime: estimate(mean),
    standardDeviationOfLeadTime: refused,
    percentiles: [],
    onTime: refused,
    onTimeOnePeriod: refused,
  });
  const hours: PartHours = {
    part: 'lever',
    route: 'lever',
    process: null,
    steps: [
      {
        stage: 'sand',
        phase: 'work',
        attended: true,
        work: estimate(work),
        waits: causes.map(([cause, value]) => ({ cause, hours: estimate(value) })),
      },
    ],
  };
  return { jobs: [classOf(null), classOf('lever')], hours: [hours] };
}

function byHand(hours: {
  stage?: number;
  equipment?: number;
  people?: number;
  batch?: number;
}): PartEstimate {
  const { stage = 0, equipment = 0, people = 0, batch = 0 } = hours;
  return {
    part: 'lever',
    estimate: {
      kind: 'by hand',
      leadTimeHours: stage + equipment + people + batch,
      stageHours: stage,
      troubleHours: 0,
      requesterHours: 0,
      batchHours: batch,
      equipmentHours: equipment,
      peopleHours: people,
    },
  };
}

function sentence(one: PartEstimate, simulated: ReturnType<typeof found>): string | undefined {
  return withDifferences([one], simulated)[0]?.difference?.sentence;
}

describe('withDifferences', () => {
  it('says in a lab with shifts that the formula knows none', async () => {
    const shifts = lab({
      people: [people('technicians', 1, ['hands'])],
      parts: [part('lever', [bench('sand', { ...attended('hands', 1), pausable: true })])],
    });
    const { handLeadTimes } = await played(shifts);
    const [all, lever] = handLeadTimes;
    expect(lever?.difference?.ratio).toBeGreaterThan(2);
    expect(lever?.difference?.hours[0]).toMatchObject({ what: 'people' });
    expect(lever?.difference?.sentence).toMatch(
      /^The simulation finds [\d.]+ hours \([\d.]+ to [\d.]+\) for “lever” where the formula says 1\.2 hours: the formula knows no shifts, and about [\d.]+ hours of the simulated time are waiting for a shift or a person\.$/,
    );
    expect(all?.difference?.sentence).toContain('for an average job');
  });

  it('says nothing in a lab that the formula describes', async () => {
    const { handLeadTimes } = await played(queueLab(10));
    expect(handLeadTimes.map(({ difference }) => difference)).toEqual([null, null]);
    // M/M/1 at 80 of 168 h: 8 / (1 − 80 / 168) h.
    expect(handLeadTimes[0]?.estimate).toMatchObject({ leadTimeHours: expect.closeTo((8 * 168) / 88, 9) });
  });

  it('names the cause that the formula lacks most, and the next where it is half as large', () => {
    const one = byHand({ stage: 20, batch: 5 });
    expect(sentence(one, found(20, { carrier: 72, batch: 6, shift: 1 }))).toBe(
      'The simulation finds 4.1 days (3.9 to 4.3) for “lever” where the formula says 1.0 day: the formula knows no carriers, and about 3.0 days of the simulated time are waiting for one.',
    );
    expect(sentence(one, found(20, { carrier: 48, batch: 34 }))).toContain(
      'waiting for one; the formula takes builds and batches to start as soon as it pays, and about 1.4 days of the simulated time, by hand 0.2 days, are waiting for one to fill.',
    );
    expect(sentence(one, found(20, { person: 90 }))).toContain(
      'the formula spreads the work of people evenly over their hours, and about 3.8 days of the simulated time, by hand none, are waiting for a person.',
    );
  });

  it('says why the simulation finds less', () => {
    expect(sentence(byHand({ stage: 20, equipment: 100 }), found(24, { machine: 6 }))).toBe(
      'The simulation finds 1.25 days (1.19 to 1.31) for “lever” where the formula says 5.0 days: the formula takes all that comes to machines and stations as coming at random and lets nobody join late, and has more waiting for them (4.2 days by hand, about 0.3 days simulated).',
    );
  });

  it('says nothing where one of the two has no figure, or they are within a factor of two', () => {
    expect(sentence(byHand({ stage: 20 }), found(20, { shift: 19 }))).toBeUndefined();
    expect(sentence(byHand({ stage: 20 }), found(20, { shift: 21 }))).toBeDefined();
    const refused: PartEstimate = {
      part: 'lever',
      estimate: { kind: 'refused', reason: 'grows without end' },
    };
    expect(sentence(refused, found(20, { shift: 90 }))).toBeUndefined();
    const simulated = found(20, { shift: 90 });
    const never = simulated.jobs.map((one) => ({
      ...one,
      meanLeadTime: { kind: 'never', reason: 'unfinished' } as const,
    }));
    expect(sentence(byHand({ stage: 20 }), { ...simulated, jobs: never })).toBeUndefined();
  });
});
