import { z } from 'zod';
import { waitCauseSchema } from './measures.ts';

/** Version of the document that shows one week of one replication. */
export const WATCHED_WEEK_VERSION = 1;

const hour = z
  .number()
  .describe('Hours since Monday 00:00 of the week by the clock on the wall; may lie outside it');
const stretchSchema = z.strictObject({ from: hour, to: hour });

export const watchedSpanSchema = z.strictObject({
  from: hour,
  to: hour,
  state: z.string().describe('State of the machine, station or person'),
  what: z.string().describe('What is done, in words; empty where the state says it all'),
  jobs: z.array(z.int()).describe('Numbers of the jobs that it is about, from 1'),
});
export type WatchedSpan = z.infer<typeof watchedSpanSchema>;

export const watchedRowSchema = z.strictObject({
  name: z.string(),
  group: z.string(),
  kind: z.enum(['machine', 'station', 'person']),
  process: z.string().nullable().describe('Print process of a machine; null for all others'),
  spans: z.array(watchedSpanSchema).describe('In order of time, without gaps over the whole week'),
});
export type WatchedRow = z.infer<typeof watchedRowSchema>;

export const watchedWaitSchema = z.strictObject({ cause: waitCauseSchema, hours: z.number() });
export type WatchedWait = z.infer<typeof watchedWaitSchema>;

export const watchedStretchSchema = z.strictObject({
  kind: z.enum(['event', 'wait', 'work', 'lost']),
  from: hour,
  to: hour,
  step: z.string().describe('Step that was worked on or waited for, or what happened'),
  at: z.string().describe('Machine or station, and people; empty where there are none'),
  causes: z.array(watchedWaitSchema).describe('Of a wait, longest first'),
  pieces: z.int(),
});
export type WatchedStretch = z.infer<typeof watchedStretchSchema>;

export const watchedJobSchema = z.strictObject({
  job: z.int().describe('From 1, in the order of arrival'),
  part: z.string(),
  rush: z.boolean(),
  pieces: z.int(),
  asked: hour,
  due: hour.nullable(),
  until: hour,
  outcome: z.enum(['finished', 'cancelled', 'unfinished']),
  work: z.number().describe('Hours in which something was done to its parts'),
  waits: z.array(watchedWaitSchema).describe('Longest first'),
  stretches: z.array(watchedStretchSchema),
});
export type WatchedJob = z.infer<typeof watchedJobSchema>;

/** One week of one replication: who did what when, and the way of every job that was in the lab. */
export const watchedWeekSchema = z
  .strictObject({
    format: z.literal('buildweek week'),
    version: z.literal(WATCHED_WEEK_VERSION),
    scenario: z.string(),
    seed: z.string(),
    replication: z.int().describe('From 1'),
    week: z.int().describe('Measured week, from 1'),
    weeks: z.int(),
    monday: z.string().describe('Date of its Monday, YYYY-MM-DD'),
    hours: z.number().describe('168: hours by the clock on the wall'),
    closed: z.array(stretchSchema).describe('When nobody was on duty'),
    rows: z.array(watchedRowSchema),
    jobs: z.array(watchedJobSchema).describe('All that were in the lab in this week, by number'),
  })
  .describe('One week of one replication of a lab, machine by machine, person by person, job by job');
export type WatchedWeek = z.infer<typeof watchedWeekSchema>;
