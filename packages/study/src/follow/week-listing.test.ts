import { createLocalTime } from '@buildweek/core';
import { describe, expect, it } from 'vitest';
import { entry, HOUR, replayWith } from '../fixture/trace.ts';
import { type WeekListing, weekListingOf } from './week-listing.ts';

const NOBODY = { job: -1, part: null, pieces: 0 } as const;
const print = { stage: 'build', phase: 'print', unit: 'resin 1' } as const;

function rows({ items }: WeekListing): unknown[][] {
  return items.map(({ kind, from, to, what, jobs, pieces }) => [
    kind,
    from / HOUR,
    to === null ? null : to / HOUR,
    what,
    jobs,
    pieces,
  ]);
}

describe('weekListingOf', () => {
  it('lists what machines and people do in order of time, with all jobs of a build in one line', () => {
    const listing = weekListingOf(
      replayWith([
        entry(8, 'on duty', { ...NOBODY, persons: ['technicians 1'] }),
        entry(8, 'job arrives'),
        entry(8, 'job arrives', { job: 1 }),
        entry(9, 'step starts', print),
        entry(9, 'step starts', { ...print, job: 1, pieces: 3 }),
        entry(9, 'has waited', { cause: 'machine', duration: HOUR }),
        entry(12, 'other duties start', { ...NOBODY, persons: ['technicians 1'] }),
        entry(13, 'other duties end', { ...NOBODY, persons: ['technicians 1'] }),
        entry(16, 'off duty', { ...NOBODY, persons: ['technicians 1'] }),
        entry(20, 'step ends', print),
        entry(20, 'step ends', { ...print, job: 1, pieces: 3 }),
        entry(20, 'job ends'),
      ]),
      1,
    );
    expect(rows(listing)).toEqual([
      ['on duty', 8, 16, '', [], 0],
      ['event', 8, 8, 'job arrives', [0], 2],
      ['event', 8, 8, 'job arrives', [1], 2],
      ['step', 9, 20, '', [0, 1], 5],
      ['other duties', 12, 13, '', [], 0],
      ['event', 20, 20, 'job ends', [0], 2],
    ]);
  });

  it('names repairs, chores and breakdowns, and breaks a chore off that a breakdown stops', () => {
    const unit = 'resin 1';
    const listing = weekListingOf(
      replayWith([
        entry(1, 'chore starts', { ...NOBODY, unit, stage: 'cleaning run' }),
        entry(2, 'breaks down', { ...NOBODY, unit, stage: 'film' }),
        entry(3, 'step starts', {
          ...NOBODY,
          unit,
          stage: 'film',
          phase: 'work',
          persons: ['technicians 1'],
        }),
        entry(5, 'step ends', { ...NOBODY, unit, stage: 'film', phase: 'work', persons: ['technicians 1'] }),
        entry(5, 'is repaired', { ...NOBODY, unit, stage: 'film' }),
        entry(6, 'chore starts', { ...NOBODY, unit, stage: 'cleaning run' }),
      ]),
      1,
    );
    expect(rows(listing).map((row) => row.slice(0, 4))).toEqual([
      ['chore', 1, 2, 'cleaning run'],
      ['down', 2, 5, 'film'],
      ['upkeep', 3, 5, 'film'],
      ['chore', 6, null, 'cleaning run'],
    ]);
    expect(listing.items.map(({ end }) => end)).toEqual(['is broken off', 'ends', 'ends', 'goes on']);
  });

  it('begins on Monday 00:00 by the clock on the wall, and starts with what goes on since before', () => {
    // The clock goes forward one hour in the first week: the second begins an hour of elapsed time sooner.
    const replay = {
      ...replayWith([
        entry(100, 'step starts', print),
        entry(167, 'job ends', { job: 3 }),
        entry(166.5, 'job ends', { job: 2 }),
        entry(170, 'step ends', print),
        entry(334.5, 'job ends', { job: 4 }),
        entry(335, 'job ends', { job: 5 }),
      ]),
      weeks: 2,
      localTime: createLocalTime([{ atHours: 146, localMinusElapsedHours: 1 }]),
    };
    const listing = weekListingOf(replay, 2);
    expect([listing.from / HOUR, listing.to / HOUR]).toEqual([167, 335]);
    expect(rows(listing).map(([kind, from, , , jobs]) => [kind, from, jobs])).toEqual([
      ['step', 100, [0]],
      ['event', 167, [3]],
      ['event', 334.5, [4]],
    ]);
  });

  it('refuses a week that the plan does not have', () => {
    expect(() => weekListingOf(replayWith([]), 2)).toThrow('There is no week 2: the plan has weeks 1 to 1.');
    expect(() => weekListingOf(replayWith([]), 0)).toThrow(RangeError);
  });
});
