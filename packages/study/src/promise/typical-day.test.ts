import { describe, expect, it } from 'vitest';
import type { DayBuild } from './day-builds.ts';
import { type PlayedDay, typicalDay } from './typical-day.ts';

function started(machine: string, jobs: readonly number[], startedAt = 0): DayBuild {
  return {
    machine,
    jobs: jobs.map((job) => ({ job, pieces: 1 })),
    startedAt,
    persons: [],
    doneAt: null,
    emptiedAt: null,
    isLost: false,
    wasRunning: false,
  };
}

function day(...builds: DayBuild[]): PlayedDay {
  return { builds, down: new Set() };
}

const groupOf = (machine: string) => machine.slice(0, 1);

describe('The play that is most like all others', () => {
  it('has the builds that most plays have, on whichever machine of their group', () => {
    const days = [
      day(started('a1', [0]), started('a2', [1])),
      day(started('a1', [0, 1], 5)),
      day(started('a2', [0, 1], 3)),
      day(started('a1', [0, 1], 9), started('b1', [2])),
    ];
    const { replication, starts } = typicalDay(days, 3, groupOf);
    expect(replication).toBe(1);
    expect(starts).toEqual([
      { build: days[1]?.builds[0], jobs: [0, 1], inGroup: 3, onMachine: 2, startTimes: [3, 5, 9] },
    ]);
  });

  it('tells the first build of a job from its second', () => {
    const days = [
      day(started('a1', [0], 1), started('a1', [0], 7)),
      day(started('a2', [0], 2), started('a2', [0], 8)),
    ];
    expect(typicalDay(days, 1, groupOf).starts.map(({ startTimes }) => startTimes)).toEqual([
      [1, 2],
      [7, 8],
    ]);
  });

  it('leaves out builds of jobs that are still to come, and does not tell them apart in others', () => {
    const days = [day(started('a1', [5]), started('a1', [0, 4])), day(started('a1', [0, 9]))];
    const { starts } = typicalDay(days, 3, groupOf);
    expect(starts.map(({ jobs, inGroup }) => [jobs, inGroup])).toEqual([[[0], 2]]);
  });
});
