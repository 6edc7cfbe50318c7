import type { AttendedWork, Duration } from '@buildweek/model';
import fc from 'fast-check';
import { takes } from './small-lab.ts';

export const SKILLS = ['prepare files', 'run machines', 'hand work'] as const;

/** Minutes of hands: mostly on a coarse grid, now and then nothing at all or an odd minute. */
const handMinutes = fc.constantFrom(30, 15, 60, 90, 120, 0, 1, 37, 240);

const machineMinutes = fc.constantFrom(60, 30, 120, 300, 600, 960, 0, 1, 77);

/** What it takes; sometimes people think that it takes another time. */
function tinyDuration(minutes: fc.Arbitrary<number>): fc.Arbitrary<Duration> {
  return fc
    .tuple(minutes, fc.constantFrom(1, 1, 1, 1, 0.5, 2))
    .map(([actual, factor]) => takes(actual, Math.round(actual * factor)));
}

export const tinyRun: fc.Arbitrary<Duration> = tinyDuration(machineMinutes);

export const tinyHands: fc.Arbitrary<Duration> = tinyDuration(handMinutes);

/** Whether it fits into a window at all is looked after by `mendWork`. */
export const tinyWork: fc.Arbitrary<AttendedWork> = fc.record({
  skill: fc.constantFrom(...SKILLS),
  persons: fc.constantFrom(1, 1, 1, 2),
  duration: tinyHands,
  pausable: fc.boolean(),
});

export function maybe<Value>(arbitrary: fc.Arbitrary<Value>): fc.Arbitrary<Value | null> {
  return fc.option(arbitrary, { nil: null, freq: 2 });
}
