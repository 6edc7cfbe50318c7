import type { TraceEntry } from '@buildweek/core';
import { describe, expect, it } from 'vitest';
import { entry, HOUR, replayWith } from '../fixture/trace.ts';
import { type JobStory, jobStoryOf, slowestJobs } from './job-story.ts';

const print = { stage: 'build', phase: 'print', unit: 'resin 1' } as const;
const sand = { stage: 'sand', phase: 'work', persons: ['technicians 1'] } as const;
const replay = replayWith([
  entry(1, 'job arrives', { dueAt: 20 * HOUR }),
  entry(5, 'has waited', { stage: 'build', phase: 'set-up', cause: 'machine', duration: HOUR }),
  entry(5, 'has waited', { stage: 'build', phase: 'set-up', cause: 'shift', duration: 3 * HOUR }),
  entry(5, 'step starts', print),
  entry(6, 'job arrives', { job: 1, rush: true }),
  entry(15, 'step ends', print),
  entry(15, 'job ends'),
]);

function storyOf(entries: readonly TraceEntry[], job = 0): JobStory {
  const story = jobStoryOf(replayWith(entries), job);
  if (story === null) throw new Error('There is no such job.');
  return story;
}

function rows(story: JobStory): unknown[][] {
  return story.stretches.map(({ kind, from, to, stage, what }) => [
    kind,
    from / HOUR,
    to / HOUR,
    stage || what,
  ]);
}

function hours({ hours: { beforePlan, work, waits } }: JobStory): unknown {
  return [beforePlan / HOUR, work / HOUR, ...waits.map((wait) => [wait.cause, wait.milliseconds / HOUR])];
}

describe('jobStoryOf', () => {
  it('tells where a job was, what it waited for and how long', () => {
    const story = jobStoryOf(replay, 0);
    expect(story).toMatchObject({
      job: 0,
      part: 'lever',
      pieces: 2,
      arrivedAt: HOUR,
      dueAt: 20 * HOUR,
      outcome: 'finished',
      until: 15 * HOUR,
    });
    if (story === null) return;
    expect(rows(story)).toEqual([
      ['event', 1, 1, 'job arrives'],
      ['wait', 1, 5, 'build'],
      ['work', 5, 15, 'build'],
      ['event', 15, 15, 'job ends'],
    ]);
    expect(story.stretches[1]?.causes).toEqual([
      { cause: 'shift', milliseconds: 3 * HOUR },
      { cause: 'machine', milliseconds: HOUR },
    ]);
    expect(hours(story)).toEqual([0, 10, ['shift', 3], ['machine', 1]]);
  });

  it('counts pieces that go separate ways by their share of the job', () => {
    // One of two pieces is printed for 4 h while the other waits, and the other way round.
    const story = storyOf([
      entry(0, 'job arrives'),
      entry(0, 'step starts', { ...print, pieces: 1 }),
      entry(4, 'step ends', { ...print, pieces: 1 }),
      entry(4, 'has waited', {
        stage: 'build',
        phase: 'print',
        cause: 'machine',
        duration: 4 * HOUR,
        pieces: 1,
      }),
      entry(4, 'step starts', { ...print, pieces: 1 }),
      entry(8, 'step ends', { ...print, pieces: 1 }),
      entry(8, 'has waited', {
        stage: 'build',
        phase: 'print',
        cause: 'rest of the job',
        duration: 4 * HOUR,
        pieces: 1,
      }),
      entry(8, 'job ends'),
    ]);
    expect(hours(story)).toEqual([0, 4, ['machine', 2], ['rest of the job', 2]]);
  });

  it('tells apart two lots that have waited equally long for the same step', () => {
    const wait = { stage: 'sand', phase: 'work', cause: 'person', duration: HOUR, pieces: 1 } as const;
    const story = storyOf([
      entry(0, 'job arrives'),
      entry(1, 'has waited', wait),
      entry(1, 'has waited', wait),
      entry(1, 'job ends'),
    ]);
    expect(rows(story).filter(([kind]) => kind === 'wait')).toHaveLength(2);
    expect(hours(story)).toEqual([0, 0, ['person', 1]]);
  });

  it('charges what was going on when a changed file came to the requester', () => {
    const story = storyOf([
      entry(0, 'job arrives'),
      entry(1, 'has waited', { stage: 'build', phase: 'set-up', cause: 'machine', duration: HOUR }),
      entry(1, 'step starts', print),
      entry(4, 'job is revised'),
      entry(4, 'step starts', sand),
      entry(6, 'step ends', sand),
      entry(6, 'job ends'),
    ]);
    expect(rows(story)).toEqual([
      ['event', 0, 0, 'job arrives'],
      ['wait', 0, 1, 'build'],
      ['wait', 1, 4, 'lost to a changed file'],
      ['lost', 1, 4, 'build'],
      ['event', 4, 4, 'job is revised'],
      ['work', 4, 6, 'sand'],
      ['event', 6, 6, 'job ends'],
    ]);
    expect(hours(story)).toEqual([0, 2, ['requester', 3], ['machine', 1]]);
  });

  it('counts from its own arrival for a job that is there at the start, and from then for what went on', () => {
    const story = storyOf([
      entry(0, 'job arrives', { duration: 5 * HOUR }),
      entry(2, 'step ends', print),
      entry(2, 'job ends'),
    ]);
    expect(story.arrivedAt).toBe(-5 * HOUR);
    expect(hours(story)).toEqual([5, 2]);
  });

  it('says how work ended that did not come to its end, and what goes on at the end', () => {
    const story = storyOf([
      entry(0, 'job arrives'),
      entry(0, 'step starts', sand),
      entry(1, 'step pauses', sand),
      entry(2, 'step resumes', sand),
      entry(3, 'step is broken off', sand),
      entry(4, 'step starts', print),
    ]);
    expect(story).toMatchObject({ outcome: 'unfinished', until: 200 * HOUR });
    expect(
      story.stretches.filter(({ kind }) => kind === 'work').map(({ what, to }) => [what, to / HOUR]),
    ).toEqual([
      ['pauses', 1],
      ['is broken off', 3],
      ['goes on', 200],
    ]);
  });

  it('ends with the withdrawal of a job', () => {
    const story = storyOf([
      entry(0, 'job arrives'),
      entry(0, 'step starts', print),
      entry(3, 'job is cancelled'),
    ]);
    expect(story).toMatchObject({ outcome: 'cancelled', until: 3 * HOUR });
    expect(rows(story).slice(1)).toEqual([
      ['lost', 0, 3, 'build'],
      ['event', 3, 3, 'job is cancelled'],
    ]);
  });

  it('knows no job that never came', () => {
    expect(jobStoryOf(replay, 7)).toBeNull();
  });
});

describe('slowestJobs', () => {
  it('puts jobs that were not finished before all others', () => {
    expect(slowestJobs(replay, 5).map(({ job, rush }) => [job, rush])).toEqual([
      [1, true],
      [0, false],
    ]);
  });

  it('leaves out jobs that were withdrawn, and those that came before or after the measured weeks', () => {
    const entries = [
      entry(-1, 'job arrives'),
      entry(2, 'job arrives', { job: 1 }),
      entry(3, 'job arrives', { job: 2 }),
      entry(4, 'job is cancelled', { job: 1 }),
      entry(6, 'job ends', { job: 0 }),
      entry(7, 'job ends', { job: 2 }),
      entry(168, 'job arrives', { job: 3 }),
    ];
    expect(slowestJobs(replayWith(entries), 5).map(({ job }) => job)).toEqual([2]);
  });
});
