import type { TraceEntry } from '@buildweek/core';
import { describe, expect, it } from 'vitest';
import { logged } from '../fixture/logged.ts';
import type { KnownStage } from './logged-stages.ts';
import { loggedMoments, tracedMoments } from './stage-moments.ts';

const common = { logged: 'x', isBuild: false, isWork: false, hasStart: true, hasEnd: true };
const SAND: KnownStage = { ...common, stage: 'sand' };
const BUILD: KnownStage = { ...common, stage: 'build', isBuild: true };

type Told = readonly [TraceEntry['what'], number, string?];

function entries(stage: string, told: readonly Told[]): TraceEntry[] {
  return told.map(([what, time, phase = 'work']) => ({
    time,
    what,
    job: 0,
    part: 'lever',
    stage,
    phase,
    unit: null,
    persons: [],
    pieces: 1,
    cause: null,
    duration: 0,
    dueAt: null,
    rush: false,
  }));
}

function moments(known: KnownStage, told: readonly Told[]) {
  return tracedMoments(
    entries(known.stage, told),
    1,
    () => [known],
    (elapsed) => elapsed + 1000,
  )[0]?.[0];
}

const TWICE: readonly Told[] = [
  ['step starts', 5],
  ['step pauses', 8],
  ['step resumes', 20],
  ['step ends', 22],
  ['step starts', 40],
  ['step ends', 50],
];

describe('tracedMoments', () => {
  it('takes the first start and the last end of a stage, breaks between them', () => {
    expect(moments(SAND, TWICE)).toEqual({ start: 1005, end: 1050 });
  });

  it('takes the time worked on it the first time where the log has the work itself', () => {
    expect(moments({ ...SAND, isWork: true }, TWICE)).toEqual({ start: 1005, end: 1010 });
  });

  it('takes the print alone of a build', () => {
    const told: readonly Told[] = [
      ['step starts', 1, 'set-up'],
      ['step ends', 2, 'set-up'],
      ['step starts', 2, 'print'],
      ['step ends', 9, 'print'],
      ['step starts', 30, 'unload'],
      ['step ends', 31, 'unload'],
    ];
    expect(moments(BUILD, told)).toEqual({ start: 1002, end: 1009 });
  });

  it('knows no end of what has not ended, and nothing of what has not begun', () => {
    expect(moments(SAND, [['step starts', 5]])).toEqual({ start: 1005, end: null });
    expect(moments(SAND, [])).toEqual({ start: null, end: null });
  });
});

describe('loggedMoments', () => {
  it('finds the stages of a job by the names that the log gives them', () => {
    const job = logged(0, 9, { stages: [{ name: 'x', start: 3, end: 7, isWork: true }] });
    expect(loggedMoments(job, [SAND, { ...BUILD, logged: 'y' }])).toEqual([
      { start: 3, end: 7 },
      { start: null, end: null },
    ]);
  });
});
