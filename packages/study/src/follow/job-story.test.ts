import type { TraceEntry } from '@buildweek/core';
import { describe, expect, it } from 'vitest';
import { jobStoryOf, slowestJobs } from './job-story.ts';
import type { Replay } from './replay.ts';

const HOUR = 3_600_000;

function entry(hour: number, what: TraceEntry['what'], more: Partial<TraceEntry> = {}): TraceEntry {
  return {
    time: hour * HOUR,
    what,
    job: 0,
    part: 'lever',
    stage: null,
    phase: null,
    unit: null,
    persons: [],
    pieces: 2,
    cause: null,
    duration: 0,
    ...more,
  };
}

const print = { stage: 'build', phase: 'print', unit: 'resin 1' };
const replay: Replay = {
  replication: 0,
  weeks: 1,
  entries: [
    entry(1, 'job arrives'),
    entry(5, 'has waited', { stage: 'build', phase: 'set-up', cause: 'machine', duration: 3 * HOUR }),
    entry(5, 'has waited', { stage: 'build', phase: 'set-up', cause: 'shift', duration: HOUR }),
    entry(5, 'step starts', print),
    entry(6, 'job arrives', { job: 1 }),
    entry(15, 'step ends', print),
    entry(15, 'job ends'),
  ],
};

describe('jobStoryOf', () => {
  it('tells where a job was, what it waited for and how long', () => {
    const story = jobStoryOf(replay, 0);
    expect(story).toMatchObject({ part: 'lever', pieces: 2, arrivedAt: HOUR, endedAt: 15 * HOUR });
    expect(
      story?.stretches.map(({ kind, from, to, causes }) => [kind, from / HOUR, to / HOUR, causes.length]),
    ).toEqual([
      ['event', 1, 1, 0],
      ['wait', 1, 5, 2],
      ['work', 5, 15, 0],
      ['event', 15, 15, 0],
    ]);
    expect(story?.stretches[1]?.causes[0]).toEqual({ cause: 'machine', milliseconds: 3 * HOUR });
  });

  it('knows no job that never came', () => {
    expect(jobStoryOf(replay, 7)).toBeNull();
  });
});

describe('slowestJobs', () => {
  it('puts jobs that were not finished before all others', () => {
    expect(slowestJobs(replay, 5).map((story) => story.job)).toEqual([1, 0]);
  });
});
