import type { Lab, StudySettings } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import type { ReplicationExecutor } from './executor.ts';
import { history } from './fixture/history.ts';
import { queueLab } from './fixture/lab.ts';
import { decideIgnoredWeeks, type IgnoredWeeksChoice } from './ignored-weeks.ts';

const settings: StudySettings = {
  seed: 'a',
  weeks: 13,
  ignoredWeeks: 'auto',
  capWeeks: 4,
  replications: 20,
  precision: null,
  replicationLimit: 100,
  level: 0.95,
};

interface Pilot {
  readonly labs: Lab[];
  readonly seeds: string[];
  readonly executor: ReplicationExecutor;
}

/** A pilot whose weekly number of jobs is given. */
function pilotOf(jobsInLab: (week: number) => number): Pilot {
  const labs: Lab[] = [];
  const seeds: string[] = [];
  return {
    labs,
    seeds,
    executor: {
      async *run(lab, wanted) {
        labs.push(lab);
        for (const { replication, weeks, seed } of wanted) {
          seeds.push(seed);
          const zeros = new Float64Array(weeks);
          const jobs = Float64Array.from({ length: weeks }, (_, week) => jobsInLab(week));
          yield history(replication, {
            weeks: {
              arrivedJobs: zeros,
              promisedJobs: zeros,
              onTimeJobs: zeros,
              finishedJobs: zeros,
              finishedParts: zeros,
              jobsInLab: jobs,
            },
          });
        }
      },
    },
  };
}

async function decide(
  lab: Lab,
  pilot: Pilot,
  more: Partial<StudySettings> = {},
): Promise<IgnoredWeeksChoice | null> {
  return decideIgnoredWeeks(lab, { ...settings, ...more }, pilot.executor, () => {}, null);
}

/** Up and down around 10, the same each time, so that the end of the start is the only trend. */
const wobble = (week: number): number => 10 + (week % 2 === 0 ? 0.2 : -0.2);

/** A lab in which one job waits when the plan starts. */
function backlogLab(): Lab {
  const job = {
    stream: 'customer',
    quantity: 1,
    rush: false,
    arrivedAtHour: 0,
    dueAtHour: null,
    stage: 'service',
    remainingHours: null,
  };
  return { ...queueLab(), initialState: { jobs: [job], machines: [] } };
}

describe('decideIgnoredWeeks', () => {
  it('cuts off the weeks in which the lab fills, found by MSER on a pilot of 20 replications of 52 weeks', async () => {
    const pilot = pilotOf((week) => (week < 6 ? week : wobble(week)));
    const found = await decide(queueLab(), pilot);
    expect(found?.ignoredWeeks).toEqual({
      weeks: 6,
      method: 'chosen by MSER',
      note: 'MSER on the weekly number of jobs in the lab, averaged over a pilot of 20 replications of 52 weeks, without closed days and growth.',
    });
    expect(found?.warnings).toEqual([]);
    expect(pilot.seeds).toEqual(Array.from({ length: 20 }, () => 'a pilot'));
  });

  it('warns when the cut lies in the second half', async () => {
    const found = await decide(
      queueLab(),
      pilotOf((week) => (week < 40 ? week : 40 + wobble(week))),
    );
    expect(found?.warnings[0]).toMatch(/does not settle: MSER would cut in its second half/);
  });

  it('makes the pilot as long as the measured weeks when these are more than 52', async () => {
    const found = await decide(queueLab(), pilotOf(wobble), { weeks: 80 });
    expect(found?.ignoredWeeks.note).toContain('20 replications of 80 weeks');
  });

  it('ignores no week, and says so, when the lab starts from a stated backlog', async () => {
    const lab = backlogLab();
    const pilot = pilotOf(wobble);
    expect((await decide(lab, pilot))?.ignoredWeeks).toEqual({
      weeks: 0,
      method: 'starts from the stated backlog',
      note: 'The plan starts with what stands in the lab; no week is left out.',
    });
    expect(pilot.labs).toEqual([]);
  });

  it('puts no week before a stated backlog, even when asked to, and warns of it', async () => {
    const found = await decide(backlogLab(), pilotOf(wobble), { ignoredWeeks: 4 });
    expect(found?.ignoredWeeks).toMatchObject({ weeks: 0, method: 'starts from the stated backlog' });
    expect(found?.warnings).toEqual([
      'The plan starts with what stands in the lab, so no week can lie before it: the 4 weeks to ignore are not played.',
    ]);
  });

  it('plays a dated list of jobs from its start', async () => {
    const plain = queueLab();
    const demand = plain.demand.map((stream) => ({
      ...stream,
      arrivals: { kind: 'dated' as const, jobs: [] },
    }));
    const found = await decide({ ...plain, demand }, pilotOf(wobble));
    expect(found?.ignoredWeeks).toMatchObject({ weeks: 0, method: 'given' });
  });

  it('plays the pilot without growth and closed days', async () => {
    const plain = queueLab();
    const lab: Lab = {
      ...plain,
      calendars: plain.calendars.map((calendar) => ({ ...calendar, closedDays: [4, 11] })),
      demand: plain.demand.map((stream) => ({
        ...stream,
        arrivals: {
          kind: 'poisson',
          perWeek: 10,
          profile: null,
          growthPerMonth: 0.02,
          jobsPerArrival: { kind: 'fixed', value: 1 },
        },
      })),
    };
    const pilot = pilotOf(wobble);
    await decide(lab, pilot);
    expect(pilot.labs[0]?.calendars.every(({ closedDays }) => closedDays.length === 0)).toBe(true);
    expect(pilot.labs[0]?.demand[0]?.arrivals).toMatchObject({ growthPerMonth: 0 });
  });

  it('takes a stated number as it is', async () => {
    const found = await decide(queueLab(), pilotOf(wobble), { ignoredWeeks: 3 });
    expect(found?.ignoredWeeks).toMatchObject({ weeks: 3, method: 'given' });
  });

  it('decides nothing when somebody stopped during the pilot', async () => {
    const { executor } = pilotOf(wobble);
    const short: ReplicationExecutor = {
      run: (lab, wanted, stop) => executor.run(lab, wanted.slice(0, 5), stop),
    };
    expect(await decideIgnoredWeeks(queueLab(), settings, short, () => {}, null)).toBeNull();
  });
});
