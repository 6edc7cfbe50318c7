import { describe, expect, it } from 'vitest';
import type { KnownStage } from './logged-stages.ts';
import { type JobMoments, stageTimes } from './stage-times.ts';

const HOUR = 3_600_000;
const common = { isBuild: false, isWork: false, hasStart: true, hasEnd: true };
const STAGES: readonly KnownStage[] = [
  { ...common, stage: 'build', logged: 'Print', hasStart: false },
  { ...common, stage: 'sand', logged: 'Sanding', isWork: true },
];

/** Hours since it was asked for: end of the build, start and end of sanding, end. */
function job(
  build: number | null,
  start: number | null,
  end: number | null,
  finished: number | null,
): JobMoments {
  const at = (hours: number | null): number | null => (hours === null ? null : 1000 + hours * HOUR);
  return {
    part: 'lever',
    asked: 1000,
    stages: [
      { start: null, end: at(build) },
      { start: at(start), end: at(end) },
    ],
    end: at(finished),
  };
}

const FIVE = Array.from({ length: 5 }, () => job(10, 14, 15, 20));

describe('stageTimes', () => {
  it('goes from each moment that the log knows to the next, and to the finish', () => {
    const traced = [FIVE.map(() => job(9, 11, 13, 14)), FIVE.map(() => job(11, 13, 15, 18))];
    const found = stageTimes('lever', STAGES, 'inspect', FIVE, traced);
    expect(found.map(({ stage, what, observed, expected }) => [stage, what, observed, expected])).toEqual([
      ['build', 'up to its end', 10, 10],
      ['sand', 'waiting before', 4, 2],
      ['sand', 'work', 1, 2],
      ['inspect', 'up to its end', 5, 2],
    ]);
    expect(found[0]).toMatchObject({ jobs: 5, usualLow: 9, usualHigh: 11, logged: 'Print', distance: 0 });
    // Twice one hour off: as far as it can be where nothing varies.
    expect(found[2]?.distance).toBe(Number.NEGATIVE_INFINITY);
    // Hours 1 and 3: standard deviation √2, of a third around the average of two √3.
    expect(found[3]?.distance).toBeCloseTo(3 / Math.sqrt(3), 12);
  });

  it('leaves out jobs of which a moment is missing, and stretches that few jobs have', () => {
    const logged = [...FIVE, job(10, null, null, 30)];
    const found = stageTimes('lever', STAGES, 'inspect', logged, [logged, logged]);
    expect(found.map(({ what, jobs }) => [what, jobs])).toEqual([
      ['up to its end', 6],
      ['waiting before', 5],
      ['work', 5],
      ['up to its end', 5],
    ]);
    const few = stageTimes('lever', STAGES, 'inspect', logged.slice(2), [logged, logged]);
    expect(few.map(({ what }) => what)).toEqual([]);
  });
});
