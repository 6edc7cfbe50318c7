import { MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { WatchedJob, WatchedStretch, WatchedWait } from '@buildweek/results';
import type { CausedWait, JobStory, JobStretch } from './job-story.ts';
import { stepWords } from './step-words.ts';
import type { WeekClock } from './week-clock.ts';

/** The story of a job, told in hours of a week; jobs are numbered from 1 for people. */
export function watchedJobOf(story: JobStory, clock: WeekClock): WatchedJob {
  const { job, part, rush, pieces, arrivedAt, dueAt, until, outcome, hours, stretches } = story;
  return {
    job: job + 1,
    part,
    rush,
    pieces,
    asked: clock.hour(arrivedAt),
    due: dueAt === null ? null : clock.hour(dueAt),
    until: clock.hour(until),
    outcome,
    work: hours.work / MILLISECONDS_PER_HOUR,
    waits: hours.waits.map(waitOf),
    stretches: stretches.map((stretch) => stretchOf(stretch, clock)),
  };
}

function stretchOf(stretch: JobStretch, clock: WeekClock): WatchedStretch {
  const { kind, from, to, stage, what, unit, persons, causes, pieces } = stretch;
  const step = stage === '' ? what : stepWords(stretch);
  return {
    kind,
    from: clock.hour(from),
    to: clock.hour(to),
    step: kind === 'event' && stage !== '' ? `${what}, at ${step}` : step,
    at: [...(unit === null ? [] : [unit]), ...persons].join(', '),
    causes: causes.map(waitOf),
    pieces,
  };
}

function waitOf({ cause, milliseconds }: CausedWait): WatchedWait {
  return { cause, hours: milliseconds / MILLISECONDS_PER_HOUR };
}
