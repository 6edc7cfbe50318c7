import { createSimulator } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { LoggedJob, LoggedJobs } from '@buildweek/records';
import { beforeAll, describe, expect, it } from 'vitest';
import { attended, bench, lab, part, people, queueLab } from '../fixture/lab.ts';
import { civil, logged, logOf } from '../fixture/logged.ts';
import { createInProcessExecutor } from '../in-process-executor.ts';
import { type ReplayFound, type ReplayQuestion, replayStudy } from './replay-study.ts';

const MONDAY = civil('2026-03-02T00:00');
const WEEK = 604_800_000;
const WEEKS = 24;
const LAB = queueLab(20, 5);

/** What a lab did, as a log: played with the trace on. */
function logOfPlay(lab: Lab, seed: string): LoggedJobs {
  const { trace } = createSimulator(lab).simulate({
    seed,
    replication: 0,
    ignoredWeeks: 0,
    weeks: WEEKS,
    capWeeks: 0,
    trace: true,
    queueWaits: false,
  });
  const ends = new Map(trace?.flatMap(({ what, job, time }) => (what === 'job ends' ? [[job, time]] : [])));
  const jobs = (trace ?? []).flatMap(({ what, job, time, part, pieces }): LoggedJob[] => {
    if (what !== 'job arrives') return [];
    const end = ends.get(job);
    const finished = end === undefined ? null : MONDAY + end;
    return [logged(MONDAY + time, finished, { row: job + 2, part: part ?? '', quantity: pieces })];
  });
  return logOf(MONDAY, MONDAY + WEEKS * WEEK, jobs);
}

function ask(log: LoggedJobs, more: Partial<ReplayQuestion> = {}): Promise<ReplayFound | null> {
  const question: ReplayQuestion = {
    lab: LAB,
    log,
    weeks: { judgedFrom: null, learnedUntil: null },
    seed: 'play',
    replications: 59,
    falseAlarmRate: 0.05,
    withDurations: false,
    wouldSee: null,
    ...more,
  };
  return replayStudy(question, { executor: createInProcessExecutor(), stop: null, onReplication: () => {} });
}

describe('replayStudy', () => {
  let right: ReplayFound | null = null;
  const log = logOfPlay(LAB, 'truth');

  beforeAll(async () => {
    right = await ask(log);
  });

  it('does not contradict the model that made the log, and says within what everything lies', () => {
    expect(right?.test.isContradicted).toBe(false);
    expect(right?.judged).toMatchObject({ from: '2026-06-22', weeks: 8 });
    expect(right?.parts.map(({ outcome }) => outcome)).toEqual(['as modelled']);
    expect(right?.series.map(({ measure, part, weeks }) => [measure, part, weeks.length])).toEqual([
      ['finished jobs', null, 8],
      ['jobs in the lab', null, 8],
      ['lead time', null, 8],
      ['finished jobs', 'customer', 8],
      ['jobs in the lab', 'customer', 8],
    ]);
    for (const { observed, low, high } of right?.series.flatMap(({ weeks }) => weeks) ?? []) {
      expect(low <= observed && observed <= high).toBe(true);
    }
    expect(right?.verdict[0]).toMatch(
      /^What happened lies within what the model expects in \d of 8 weeks \(\d to 8 are to be expected if the model is right\)\.$/,
    );
    expect(right?.verdict[1]).toContain('Nothing in these weeks contradicts the model');
    expect(right?.warnings).toEqual([]);
  });

  it('counts what happened as the log has it', () => {
    const from = civil('2026-06-22T00:00');
    const finished = log.jobs.filter(
      (job) => (job.finished ?? 0) >= from && (job.finished ?? 0) < from + WEEK,
    );
    expect(right?.series[0]?.weeks[0]?.observed).toBe(finished.length);
    expect(right?.judged.jobs).toBe(log.jobs.filter(({ asked }) => asked >= from).length);
  });

  it('is the same again, and another with another seed', async () => {
    expect(await ask(log)).toEqual(right);
    expect((await ask(log, { seed: 'other' }))?.leadTimes).not.toEqual(right?.leadTimes);
  });

  it('says of a lab that is much slower that it is, and by how much', async () => {
    const slow = await ask(logOfPlay(queueLab(20, 7.5), 'truth'));
    expect(slow?.test.isContradicted).toBe(true);
    expect(slow?.test.families.some(({ isLeft }) => isLeft)).toBe(true);
    const [part] = slow?.parts ?? [];
    expect(part?.outcome).toBe('slower');
    expect(part?.leadTime.observed).toBeGreaterThan(part?.leadTime.high ?? Number.POSITIVE_INFINITY);
    expect(slow?.verdict[1]).toContain('contradicts the model');
    expect(slow?.verdict.at(-1)).toMatch(/^Jobs of “customer” are \d+\.\d (hours|days) slower than modelled/);
  });

  it('judges finishes without an hour against finishes without an hour', async () => {
    const day = 86_400_000;
    const coarse = log.jobs.map((job) => ({
      ...job,
      finished: job.finished === null ? null : Math.floor(job.finished / day) * day + day - 60_000,
      finishedHasClock: false,
    }));
    const found = await ask({ ...log, jobs: coarse });
    expect(found?.test.isContradicted).toBe(false);
    // Half a day more on average, in the log as in the play.
    const more = (found?.parts[0]?.leadTime.expected ?? 0) - (right?.parts[0]?.leadTime.expected ?? 0);
    expect(more).toBeGreaterThan(6);
    expect(more).toBeLessThan(18);
  });

  it('warns when weeks are judged that were used for learning, and when the lab had no time to fill', async () => {
    const learned = civil('2026-07-13T00:00');
    const found = await ask(log, { weeks: { judgedFrom: civil('2026-06-01T00:00'), learnedUntil: learned } });
    expect(found?.warnings).toEqual([expect.stringContaining('weeks before that are judged')]);
    const early = await ask(log, { weeks: { judgedFrom: MONDAY, learnedUntil: null } });
    expect(early?.warnings).toEqual([expect.stringContaining('starts with an empty lab')]);
  });

  it('warns of many jobs that the scenario does not know', async () => {
    const jobs = log.jobs.map((job, index) => (index % 10 === 0 ? { ...job, part: 'gadget' } : job));
    const found = await ask({ ...log, jobs });
    expect(found?.warnings).toEqual([expect.stringContaining('of parts that the scenario does not know')]);
    expect(found?.log.leftOut[0]).toMatchObject({ why: 'unknown part' });
  });

  it('lets work take as long as the log says where it is asked to, and says where', async () => {
    const timed = log.jobs.map((job) => ({
      ...job,
      stages: [{ name: 'Service', start: job.asked, end: job.asked + 3_600_000, isWork: true }],
    }));
    const found = await ask({ ...log, jobs: timed }, { withDurations: true });
    expect(found?.run.loggedDurations).toEqual(['customer: service']);
    // An hour of work each, and hardly any waiting.
    expect(found?.parts[0]?.leadTime.expected).toBeGreaterThan(1);
    expect(found?.parts[0]?.leadTime.expected).toBeLessThan(1.2);
    expect(found?.stages.find(({ what }) => what === 'work')).toMatchObject({ observed: 1, expected: 1 });
    const none = await ask(log, { withDurations: true });
    expect(none?.warnings).toEqual([expect.stringContaining('all durations are drawn')]);
  });

  it('says how often the check would see something that takes longer than modelled', async () => {
    const duration = { distribution: { kind: 'exponential', mean: 1.4 }, typicalHours: 1.4 } as const;
    const work = { ...attended('serve', 1.4), duration, pausable: true };
    const parts = [part('customer', [bench('service', work)])];
    const staffed = lab({ people: [people('all', 1, ['serve'])], parts }, 18);
    const own = logOfPlay(staffed, 'truth');
    const found = await ask(own, { lab: staffed, wouldSee: 0.5 });
    expect(found?.wouldSee.map(({ what, factor, of }) => [what, factor, of])).toEqual([
      ['times of serve', 1.5, 99],
    ]);
    // With a load of 0.63, half more brings it to 0.95.
    expect(found?.wouldSee[0]?.seen).toBeGreaterThan(80);
    const hardly = await ask(own, { lab: staffed, wouldSee: 0.001 });
    expect(hardly?.wouldSee[0]?.seen).toBeLessThan(20);
    expect(found?.test).toEqual(hardly?.test);
  });

  it('refuses a log that says too little, with what is missing', async () => {
    const jobs = log.jobs.map((job) => ({ ...job, part: 'gadget' }));
    await expect(ask({ ...log, jobs })).rejects.toThrow(
      /no job was finished .*at least 20[\s\S]*of an unknown part \(row 2, 3/,
    );
    await expect(ask({ ...log, jobs: log.jobs.slice(0, 3) })).rejects.toThrow('at least 20 are needed');
  });

  it('has no answer when it is stopped', async () => {
    const stop = new AbortController();
    const answer = replayStudy(
      {
        lab: LAB,
        log,
        weeks: { judgedFrom: null, learnedUntil: null },
        seed: 'play',
        replications: 59,
        falseAlarmRate: 0.05,
        withDurations: false,
        wouldSee: null,
      },
      {
        executor: createInProcessExecutor(),
        stop: stop.signal,
        onReplication: (done) => {
          if (done === 3) stop.abort();
        },
      },
    );
    expect(await answer).toBeNull();
  });
});
