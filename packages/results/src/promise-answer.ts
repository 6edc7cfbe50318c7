import { z } from 'zod';
import { answeredScenarioSchema } from './answer-parts.ts';
import { estimateOrRefusedSchema } from './estimate.ts';
import { cautionSchema } from './results.ts';

/** Version of the document with promised dates. */
export const PROMISE_VERSION = 1;

/** A moment of the lab. */
export const momentSchema = z.strictObject({
  at: z.string().describe('Date and time of the clock on the wall of the lab, 2027-03-01 09:30, rounded up'),
  hours: z.number().describe('Hours by the clock from now'),
});
export type Moment = z.infer<typeof momentSchema>;

/** The date to promise with one probability. */
export const promisedDateSchema = z.strictObject({
  probability: z.number().describe('Of being finished by then, 0 to 1'),
  ready: momentSchema.nullable().describe('When it is finished with this probability'),
  promise: momentSchema
    .nullable()
    .describe('The closing time of the lab to promise: the first that is not before it'),
  refused: z.string().nullable().describe('Why no date is given'),
});
export type PromisedDate = z.infer<typeof promisedDateSchema>;

/** What is asked for. */
export const requestSchema = z.strictObject({
  part: z.string(),
  isNew: z.boolean().describe('Not a part of the scenario: a mesh or a size'),
  quantity: z.int(),
  finish: z.string(),
  rush: z.boolean(),
  notes: z.array(z.string()).describe('What was found when a mesh was measured'),
});
export type PromiseRequest = z.infer<typeof requestSchema>;

/** One way to have it made. */
export const promiseWaySchema = z.strictObject({
  route: z.string().nullable().describe('Route of the lab; null: sent out'),
  process: z.enum(['MEX', 'VPP', 'PBF', 'other']).nullable(),
  material: z.string().nullable(),
  isOwn: z.boolean().describe('The scenario makes the part so'),
  dates: z.array(promisedDateSchema),
  meanHours: estimateOrRefusedSchema.describe('Hours by the clock until it is finished'),
  due: momentSchema
    .nullable()
    .describe('What the lab promises by its usual rule, by which the job is ranked'),
  onTime: estimateOrRefusedSchema.nullable().describe('Chance of keeping that'),
});
export type PromiseWay = z.infer<typeof promiseWaySchema>;

/** What would move the date. */
export const promiseMoveSchema = z.strictObject({
  what: z.string().describe('As "as a rush job"'),
  quantity: z.int(),
  rush: z.boolean(),
  finish: z.string(),
  dates: z.array(promisedDateSchema),
  hours: estimateOrRefusedSchema.describe('Hours by which it is finished later, on the same random numbers'),
});
export type PromiseMove = z.infer<typeof promiseMoveSchema>;

/** What taking the request on does to a job that is there already. */
export const promiseEffectSchema = z.strictObject({
  job: z.string(),
  part: z.string(),
  quantity: z.int(),
  rush: z.boolean(),
  due: momentSchema.nullable(),
  onTimeBefore: estimateOrRefusedSchema.nullable().describe('Null: nothing is promised'),
  onTimeAfter: estimateOrRefusedSchema.nullable(),
  hoursLater: estimateOrRefusedSchema.describe('Hours by which it ends later, on the same random numbers'),
});
export type PromiseEffect = z.infer<typeof promiseEffectSchema>;

/** The answer for one request. */
export const promisedRequestSchema = z.strictObject({
  request: requestSchema,
  ways: z.array(promiseWaySchema).describe('Routes of the lab that can make it, and sending it out'),
  impossible: z.array(z.strictObject({ way: z.string(), reason: z.string() })),
  chosen: z.string().describe('Route that what follows is about'),
  moves: z.array(promiseMoveSchema),
  effects: z.array(promiseEffectSchema).describe('Of taking it on, on the jobs in the lab; most hurt first'),
  jobsLate: estimateOrRefusedSchema
    .nullable()
    .describe('By how many more of the jobs in the lab miss their promises; null: none has one'),
});
export type PromisedRequest = z.infer<typeof promisedRequestSchema>;

/** A job that stands in the lab. */
export const openJobSchema = z.strictObject({
  job: z.string(),
  demand: z.string(),
  part: z.string(),
  quantity: z.int(),
  rush: z.boolean(),
  stage: z.string().describe('Where it stands'),
  machine: z.string().nullable().describe('In which machine'),
  arrived: z.string().describe('2027-03-01 09:30'),
  due: momentSchema.nullable(),
  onTime: estimateOrRefusedSchema.nullable().describe('Chance of keeping its promise; null: it has none'),
  meanReady: momentSchema.nullable().describe('Mean of the plays; null: in some it is not finished'),
  dates: z.array(promisedDateSchema),
  risk: z
    .array(z.string())
    .describe('Why it may be late, where fewer than nine in ten plays keep the promise'),
  moved: z.array(z.string()).describe('By how much its date has moved since the document before, and why'),
});
export type OpenJob = z.infer<typeof openJobSchema>;

/** A build to start before the lab opens again. */
export const plannedStartSchema = z.strictObject({
  machine: z.string(),
  jobs: z.array(z.strictObject({ job: z.string(), part: z.string(), pieces: z.int() })),
  start: momentSchema.describe('In the play that is most like all others'),
  startBy: momentSchema.describe('Nine in ten of the plays that start it have started it by then'),
  by: z.array(z.string()).describe('Who begins it in that play'),
  share: z.number().describe('Of the plays: the same jobs together on a machine of this group, 0 to 1'),
  shareOnMachine: z.number().describe('Of the plays: on this very machine'),
});
export type PlannedStart = z.infer<typeof plannedStartSchema>;

/** What becomes of a machine until the lab opens again. */
export const overnightSchema = z.strictObject({
  machine: z.string(),
  state: z.enum(['stands done', 'runs', 'is empty', 'is down']),
  jobs: z.array(z.string()).describe('Of the jobs in the lab, what it holds'),
  since: momentSchema.nullable().describe('Done since; null: it still runs, or is empty'),
  standsHours: z
    .number()
    .describe('Hours until the lab opens in which it prints nothing, in the mean of the plays'),
  share: z.number().describe('Of the plays in which it is in this state then'),
});
export type Overnight = z.infer<typeof overnightSchema>;

/** What to do before the lab closes. */
export const promiseDaySchema = z.strictObject({
  closes: momentSchema,
  opens: momentSchema,
  starts: z.array(plannedStartSchema).describe('Builds, by when they start'),
  overnight: z.array(overnightSchema).describe('Every machine, when the lab opens again'),
});
export type PromiseDay = z.infer<typeof promiseDaySchema>;

/** The answer of the day before that this one is held against. */
export const promiseSinceSchema = z.strictObject({
  now: z.string().describe('Its moment, 2027-03-01 09:30'),
  come: z.array(z.string()).describe('Jobs that have come since'),
  gone: z
    .array(z.string())
    .describe('Jobs that are there no more, by their names then: finished, or withdrawn'),
});
export type PromiseSince = z.infer<typeof promiseSinceSchema>;

/** Builds that somebody has decided on, and what follows from it. */
export const pinnedAnswerSchema = z.strictObject({
  builds: z.array(
    z.strictObject({
      machine: z.string(),
      jobs: z.array(z.string()),
      from: momentSchema.describe('From when on it is started'),
      share: z.number().describe('Of the plays in which it is started whole before the lab opens again'),
    }),
  ),
  effects: z
    .array(promiseEffectSchema)
    .describe('On the jobs in the lab: before is without the decisions, after with them; most hurt first'),
  jobsLate: estimateOrRefusedSchema
    .nullable()
    .describe('By how many more of the jobs in the lab miss their promises; null: none has one'),
});
export type PinnedAnswer = z.infer<typeof pinnedAnswerSchema>;

/** When jobs will be ready, from the state of the lab today. */
export const promiseAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek promise'),
    version: z.literal(PROMISE_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    scenario: answeredScenarioSchema,
    now: z.string().describe('Clock on the wall of the lab, 2027-03-01 09:30'),
    jobsInLab: z.int(),
    closed: z
      .array(z.strictObject({ fromHour: z.number(), toHour: z.number() }))
      .describe('When the lab is closed, hours from now, as far as dates reach'),
    run: z.strictObject({
      seed: z.string(),
      replications: z.int().describe('Plays of what is to come from the state of today'),
      lastWeeks: z
        .int()
        .describe('Weeks after which a job that is not finished counts as later than everything'),
      level: z.number().describe('Confidence level of intervals'),
    }),
    request: promisedRequestSchema.nullable().describe('Null: nothing new was asked for'),
    openJobs: z.array(openJobSchema).nullable().describe('Null: it was not asked for them'),
    day: promiseDaySchema.nullable().describe('What to do before the lab closes; null: it was not asked for'),
    since: promiseSinceSchema.nullable().describe('Null: it is held against no answer of the day before'),
    pinned: pinnedAnswerSchema.nullable().describe('What was decided; null: nothing'),
    verdict: z.array(z.string()),
    assumptions: z.array(z.string()),
    cautions: z.array(cautionSchema),
    warnings: z.array(z.string()),
  })
  .describe('When jobs will be ready, from the state of the lab today');
export type PromiseAnswer = z.infer<typeof promiseAnswerSchema>;
