import { MILLISECONDS_PER_HOUR } from '@buildweek/core';
import type { JobStory, WeekListing } from '@buildweek/study';
import type { StoryClock } from './story-clock.ts';
import { jobNumber, promiseOf } from './story-words.ts';

/** A job for a program: hours since the stated start of the plan, and local date and time. */
export function storyDocument(story: JobStory, clock: StoryClock): Record<string, unknown> {
  return {
    ...storyHead(story, clock),
    stretches: story.stretches.map((stretch) => ({
      ...stretch,
      from: moment(stretch.from, clock),
      to: moment(stretch.to, clock),
      hours: hours(stretch.to - stretch.from),
      causes: stretch.causes.map(waitDocument),
    })),
  };
}

/** The same without what happened in between. */
export function storyHead(story: JobStory, clock: StoryClock): Record<string, unknown> {
  const { job, part, rush, pieces, arrivedAt, dueAt, outcome, until } = story;
  return {
    job: jobNumber(job),
    part,
    pieces,
    priority: rush ? 'rush' : 'normal',
    arrived: moment(arrivedAt, clock),
    outcome,
    until: moment(until, clock),
    hoursInLab: hours(until - arrivedAt),
    promised: dueAt === null ? null : moment(dueAt, clock),
    promise: promiseOf(story) || null,
    hours: {
      beforePlan: hours(story.hours.beforePlan),
      work: hours(story.hours.work),
      waits: story.hours.waits.map(waitDocument),
    },
  };
}

/** A week for a program. */
export function weekDocument(
  { week, from, to, items }: WeekListing,
  clock: StoryClock,
): Record<string, unknown> {
  return {
    week,
    from: moment(from, clock),
    to: moment(to, clock),
    items: items.map((item) => ({
      ...item,
      from: moment(item.from, clock),
      to: item.to === null ? null : moment(item.to, clock),
      jobs: item.jobs.map(jobNumber),
    })),
  };
}

function waitDocument({ cause, milliseconds }: { readonly cause: string; readonly milliseconds: number }) {
  return { cause, hours: hours(milliseconds) };
}

function moment(time: number, clock: StoryClock) {
  return { hours: hours(time), local: clock.iso(time) };
}

function hours(milliseconds: number): number {
  return milliseconds / MILLISECONDS_PER_HOUR;
}
