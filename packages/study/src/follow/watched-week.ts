import type { StateSpan } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { type Run, WATCHED_WEEK_VERSION, type WatchedRow, type WatchedWeek } from '@buildweek/results';
import { jobStoryOf } from './job-story.ts';
import type { Replay } from './replay.ts';
import { watchedJobOf } from './watched-job.ts';
import { clockOfWeek, type WeekClock } from './week-clock.ts';
import { weekListingOf } from './week-listing.ts';
import { spansOf } from './week-spans.ts';

/** What a watched week is of. */
export interface WatchedLab {
  /** Name of the scenario. */
  readonly name: string;
  readonly lab: Lab;
  readonly run: Pick<Run, 'seed'>;
}

/**
 * One week of a replayed replication: every machine, station and person with what they do and wait for, and the way
 * of every job that is in the lab at some moment of it.
 *
 * @param week from 1 to the number of measured weeks
 * @throws RangeError when the plan has no such week
 */
export function watchedWeekOf(replay: Replay, watched: WatchedLab, week: number): WatchedWeek {
  const { lab, name, run } = watched;
  const listing = weekListingOf(replay, week);
  const clock = clockOfWeek(replay, week, lab.startDate);
  const states = replay.states.filter((span) => span.from < listing.to && span.to > listing.from);
  const people = states.filter(({ person }) => person !== null);
  return {
    format: 'buildweek week',
    version: WATCHED_WEEK_VERSION,
    scenario: name,
    seed: run.seed,
    replication: replay.replication + 1,
    week,
    weeks: replay.weeks,
    monday: clock.monday,
    hours: clock.hours,
    closed: closedSpans(people, clock),
    rows: rowsOf(lab).map((row) => ({ ...row, spans: spansOf(row, states, listing.items, clock) })),
    jobs: jobsWithin(replay, listing.from, listing.to).flatMap((job) => {
      const story = jobStoryOf(replay, job);
      return story === null ? [] : [watchedJobOf(story, clock)];
    }),
  };
}

/** The first measured week in which nothing unusual has to be expected: the one in the middle. */
export function middleWeek(weeks: number): number {
  return Math.ceil(weeks / 2);
}

function rowsOf(lab: Lab): Omit<WatchedRow, 'spans'>[] {
  const individuals = (
    { name, count }: { readonly name: string; readonly count: number },
    kind: WatchedRow['kind'],
    process: string | null,
  ): Omit<WatchedRow, 'spans'>[] =>
    Array.from({ length: count }, (_, index) => ({
      name: `${name} ${index + 1}`,
      group: name,
      kind,
      process,
    }));
  return [
    ...lab.machines.flatMap((group) => individuals(group, 'machine', group.process)),
    ...lab.stations.flatMap((group) => individuals(group, 'station', null)),
    ...lab.people.flatMap((group) => individuals(group, 'person', null)),
  ];
}

/** Stretches in which every person is off duty. */
function closedSpans(people: readonly StateSpan[], clock: WeekClock): { from: number; to: number }[] {
  const present = people
    .filter(({ state }) => state !== 'off')
    .map(({ from, to }) => ({ from: clock.within(from), to: clock.within(to) }))
    .sort((a, b) => a.from - b.from);
  const closed: { from: number; to: number }[] = [];
  let end = 0;
  for (const { from, to } of present) {
    if (from > end) closed.push({ from: end, to: from });
    end = Math.max(end, to);
  }
  if (people.length > 0 && end < clock.hours) closed.push({ from: end, to: clock.hours });
  return closed;
}

/** Numbers of the jobs that are in the lab at some moment between two times. */
function jobsWithin({ entries }: Replay, from: number, to: number): number[] {
  const ends = new Map<number, number>();
  const arrivals = new Map<number, number>();
  for (const { what, job, time } of entries) {
    if (what === 'job arrives') arrivals.set(job, time);
    else if (what === 'job ends' || what === 'job is cancelled') ends.set(job, time);
  }
  return [...arrivals]
    .filter(([job, arrival]) => arrival < to && (ends.get(job) ?? Number.POSITIVE_INFINITY) > from)
    .map(([job]) => job)
    .sort((a, b) => a - b);
}
