import { z } from 'zod';
import { estimateOrRefusedSchema, estimateSchema, predictionOrRefusedSchema } from './estimate.ts';

/** Causes of waiting, in the order in which an instant is charged: the first that applies counts. */
export const WAIT_CAUSES = [
  'requester',
  'machine down',
  'machine',
  'carrier',
  'batch',
  'shift',
  'person',
  'rest of the job',
] as const;
export const waitCauseSchema = z.enum(WAIT_CAUSES);
export type WaitCause = z.infer<typeof waitCauseSchema>;

/** What a machine can be doing; the times add up to calendar time. */
export const MACHINE_STATES = [
  'idle',
  'waiting to start',
  'waiting to fill',
  'prepare',
  'set-up',
  'warm-up',
  'print',
  'cool-down',
  'waiting to be unloaded',
  'unload',
  'maintenance',
  'test print',
  'down',
  'off',
] as const;
export const machineStateSchema = z.enum(MACHINE_STATES);
export type MachineState = z.infer<typeof machineStateSchema>;

/** What a station can be doing; the times add up to calendar time. */
export const STATION_STATES = [
  'idle',
  'waiting to start',
  'waiting to fill',
  'load',
  'run',
  'waiting to be unloaded',
  'unload',
  'maintenance',
  'test print',
  'down',
  'off',
] as const;
export const stationStateSchema = z.enum(STATION_STATES);
export type StationState = z.infer<typeof stationStateSchema>;

/** What a person can be doing; the times add up to calendar time. */
export const PERSON_STATES = ['off', 'idle', 'work', 'other duties', 'overtime'] as const;
export const personStateSchema = z.enum(PERSON_STATES);
export type PersonState = z.infer<typeof personStateSchema>;

export const percentileSchema = z.strictObject({
  share: z.number().describe('0.9 is the value that nine of ten jobs stay below'),
  longRun: estimateOrRefusedSchema.describe('Hours, over all jobs in the long run'),
  onePeriod: predictionOrRefusedSchema.describe('Hours, what one period of the measured length may bring'),
});
export type Percentile = z.infer<typeof percentileSchema>;

/** Lead times and promises of a class of jobs. */
export const jobClassSchema = z.strictObject({
  part: z.string().nullable().describe('Part type; null: all'),
  priority: z.enum(['all', 'normal', 'rush']),
  jobs: z.int().describe('Jobs of the cohort, over all replications'),
  unfinished: z.int().describe('Of these, not finished at the cap; they count as later than everything'),
  meanLeadTime: estimateOrRefusedSchema.describe('Hours by the clock, from complete file to last good part'),
  standardDeviationOfLeadTime: estimateOrRefusedSchema.describe('Hours, over jobs'),
  percentiles: z.array(percentileSchema),
  onTime: estimateOrRefusedSchema.describe(
    'Share of jobs that keep their promise; refused without a promise',
  ),
  onTimeOnePeriod: predictionOrRefusedSchema,
});
export type JobClass = z.infer<typeof jobClassSchema>;

/** A curve with its interval. */
export const bandSchema = z.strictObject({
  value: z.array(z.number()),
  low: z.array(z.number()),
  high: z.array(z.number()),
  level: z.number(),
  replications: z.int(),
});
export type Band = z.infer<typeof bandSchema>;

export const flowSchema = z
  .strictObject({
    arrivedJobs: bandSchema,
    finishedJobs: bandSchema,
    finishedParts: bandSchema,
    jobsInLab: bandSchema.describe('Time average of jobs in the lab'),
  })
  .describe('One value for each measured week');
export type Flow = z.infer<typeof flowSchema>;

export const queueSchema = z.strictObject({
  name: z.string(),
  kind: z
    .enum(['machine', 'station', 'people', 'all'])
    .describe('What is waited for; all: jobs in the lab, waiting or not'),
  meanLength: estimateSchema.describe(
    'Time average; jobs (a job that is split counts by share of its pieces)',
  ),
  meanWait: estimateOrRefusedSchema.describe('Hours in this queue for each job that came through it'),
  waitPercentiles: z.array(percentileSchema).describe('Hours, of single visits; empty unless asked for'),
  byHourOfWeek: bandSchema.describe('168 values, Monday 00:00 first, local time'),
  byWeek: bandSchema.describe('One value for each measured week'),
});
export type Queue = z.infer<typeof queueSchema>;

/** Where the hours of a job of one part type go. */
export const stepHoursSchema = z.strictObject({
  stage: z.string(),
  phase: z.enum([
    'prepare',
    'set-up',
    'warm-up',
    'first layers',
    'print',
    'cool-down',
    'unload',
    'load',
    'run',
    'work',
    'wait',
    'outside',
  ]),
  attended: z.boolean(),
  work: estimateSchema.describe('Hours in which the step goes on, per job'),
  waits: z
    .array(z.strictObject({ cause: waitCauseSchema, hours: estimateSchema }))
    .describe('Only causes that occurred'),
});
export type StepHours = z.infer<typeof stepHoursSchema>;

export const partHoursSchema = z.strictObject({
  part: z.string(),
  route: z.string(),
  process: z.enum(['MEX', 'VPP', 'PBF', 'other']).nullable(),
  steps: z.array(stepHoursSchema).describe('Work and waits together are the mean lead time of finished jobs'),
});
export type PartHours = z.infer<typeof partHoursSchema>;

export const machineUseSchema = z.strictObject({
  group: z.string(),
  name: z.string(),
  process: z.enum(['MEX', 'VPP', 'PBF', 'other']),
  states: z
    .array(z.strictObject({ state: machineStateSchema, share: estimateSchema }))
    .describe('Shares of calendar time; together 1'),
  buildsPerWeek: estimateSchema,
  partsPerWeek: estimateSchema,
  meanFill: estimateOrRefusedSchema.describe('Share of the capacity, over builds'),
});
export type MachineUse = z.infer<typeof machineUseSchema>;

export const stationUseSchema = z.strictObject({
  group: z.string(),
  name: z.string(),
  states: z.array(z.strictObject({ state: stationStateSchema, share: estimateSchema })),
  batchesPerWeek: estimateSchema,
  partsPerWeek: estimateSchema,
  meanFill: estimateOrRefusedSchema,
});
export type StationUse = z.infer<typeof stationUseSchema>;

export const peopleUseSchema = z.strictObject({
  group: z.string(),
  count: z.int(),
  states: z
    .array(z.strictObject({ state: personStateSchema, share: estimateSchema }))
    .describe('Shares of calendar time over the group; together 1'),
  busyShareOfDuty: estimateOrRefusedSchema.describe('Work and other duties as a share of the hours on duty'),
  hoursByStage: z.array(z.strictObject({ stage: z.string(), hoursPerWeek: estimateSchema })),
  busyByHourOfWeek: bandSchema.describe(
    'Mean number of persons at work (other duties and overtime included), 168 values',
  ),
  onDutyByHourOfWeek: z.array(z.number()).describe('Mean number of persons on duty, 168 values'),
});
export type PeopleUse = z.infer<typeof peopleUseSchema>;

/** What a hand calculation says about one group of resources. */
export const handLoadSchema = z.strictObject({
  name: z.string(),
  kind: z.enum(['machine', 'station', 'people']),
  count: z.int(),
  demandHoursPerWeek: z.number().describe('Hours of the resource that the demand asks for in a week'),
  availableHoursPerWeek: z.number(),
  load: z.number().describe('Their ratio; at 1 and above the queue grows without end'),
  note: z.string().describe('What the figure rests on, in one sentence'),
});
export type HandLoad = z.infer<typeof handLoadSchema>;
