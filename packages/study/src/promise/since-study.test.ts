import type { InitialJob, Lab } from '@buildweek/model';
import type { OpenJob } from '@buildweek/results';
import { describe, expect, it } from 'vitest';
import { attended, bench, part, people } from '../fixture/lab.ts';
import { promisePlay, sandingLab } from '../fixture/requested-lab.ts';
import { openJobsStudy } from './open-jobs-study.ts';
import { sinceVerdict } from './since-study.ts';
import { sameJobs } from './since-yesterday.ts';

const OLD: Partial<InitialJob> = { quantity: 4, dueAtHour: 3 * 24 + 16, arrivedAtHour: -30 };

/** The answer of a lab, taken for that of the day before. */
async function answered(lab: Lab) {
  const found = await openJobsStudy(lab, promisePlay());
  return { now: '2025-01-05 16:00', openJobs: found?.openJobs ?? [], lab };
}

async function since(today: Lab, before: Lab) {
  const found = await openJobsStudy(today, promisePlay(), await answered(before));
  if (found === null) throw new Error('It was stopped.');
  return found;
}

describe('Dates that have moved since the day before', () => {
  it('say which jobs have come, and by how much these make a job later', async () => {
    const { openJobs, since: found } = await since(
      sandingLab([OLD, { quantity: 3, rush: true, dueAtHour: 16 }, { quantity: 1, dueAtHour: 15 }]),
      sandingLab([OLD]),
    );
    // Three hours and one hour go before it: Monday 12:00 becomes 16:00.
    expect(openJobs.map(({ moved }) => moved)).toEqual([
      [
        'Its 80 % date is 4.0 h later than by the answer of Sun 5 Jan 16:00 (Mon 6 Jan 16:00, and was Mon 6 Jan 12:00): one rush job has come, which makes it 3.0 h later; one job has come, which makes it 1.0 h later; the rest is how the work went.',
      ],
      [],
      [],
    ]);
    expect(found).toEqual({ now: '2025-01-05 16:00', come: ['job 2', 'job 3'], gone: [] });
    expect(sinceVerdict(openJobs, found as NonNullable<typeof found>)).toEqual([
      'Since Sun 5 Jan 16:00 2 jobs came and 0 jobs left; the date of one job has moved by an hour or more.',
    ]);
  });

  it('say that a job stands at an earlier stage again', async () => {
    const route = [bench('make', attended('hands', 3)), bench('sand', attended('hands', 2))];
    const parts = ['lever', 'new request'].map((name) => part(name, route));
    const job = { ...OLD, quantity: 1 };
    const { openJobs } = await since(
      sandingLab([{ ...job, stage: 'make' }], { parts }),
      sandingLab([{ ...job, stage: 'sand' }], { parts }),
    );
    expect(openJobs[0]?.moved[0]).toContain(
      'it stands at make again, and was at sand, which makes it 3.0 h later',
    );
  });

  it('say that people are stated otherwise, and that a date can come earlier', async () => {
    const one = sandingLab([OLD, { ...OLD, quantity: 5 }]);
    const two: Lab = { ...one, people: [people('technicians', 2, ['hands'])] };
    const earlier = await since(two, one);
    expect(earlier.openJobs[1]?.moved[0]).toMatch(
      /h earlier than by the answer of .*“technicians” are stated otherwise .*, which makes it \d+\.\d h earlier; the rest/,
    );
  });

  it('say so when nothing that is known has changed, and nothing of dates that are where they were', async () => {
    const before = await answered(sandingLab([OLD]));
    const shifted: OpenJob[] = before.openJobs.map((job) => ({
      ...job,
      dates: job.dates.map((date) => ({ ...date, ready: { at: '2025-01-06 09:00', hours: 9 } })),
    }));
    const today = sandingLab([OLD]);
    const moved = await openJobsStudy(today, promisePlay(), { ...before, openJobs: shifted });
    expect(moved?.openJobs[0]?.moved[0]).toContain(
      'nothing that is known has changed: it has gone slower than was likely',
    );
    expect((await openJobsStudy(today, promisePlay(), before))?.openJobs[0]?.moved).toEqual([]);
  });

  it('name the jobs that are there no more', async () => {
    const { since: found } = await since(sandingLab([OLD]), sandingLab([{ ...OLD, quantity: 2 }, OLD]));
    expect(found?.gone).toEqual(['job 1']);
  });
});

describe('The same jobs on two days', () => {
  it('are known by what was asked for and when, one after the other where they are alike', async () => {
    const { openJobs } = await answered(sandingLab([OLD, OLD, { ...OLD, rush: true }]));
    const [first, second, rush] = openJobs;
    expect(
      sameJobs(
        [first, rush, second].flatMap((job) => job ?? []),
        openJobs,
      ),
    ).toEqual([first, rush, second]);
    const named = openJobs.map((job, index) => ({ ...job, job: `R-${index}` }));
    expect(
      sameJobs(
        [...named].reverse().map((job) => ({ ...job, due: null })),
        named,
      ),
    ).toEqual([...named].reverse());
    expect(sameJobs(openJobs, first === undefined ? [] : [first])).toEqual([first, null, null]);
  });
});
