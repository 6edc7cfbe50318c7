import { z } from 'zod';
import { answeredScenarioSchema } from './answer-parts.ts';
import { cautionSchema } from './results.ts';

/** Version of the document that holds a model against what happened. */
export const REPLAY_VERSION = 1;

/** What happened, beside what the model expects. */
export const heldAgainstSchema = z.strictObject({
  observed: z.number().describe('What happened'),
  expected: z.number().describe('Average of the replications'),
  low: z.number().describe('Lower edge of the band of the test'),
  high: z.number().describe('Upper edge of the band of the test'),
});
export type HeldAgainst = z.infer<typeof heldAgainstSchema>;

/** A curve over the judged weeks. */
export const heldWeeksSchema = z.strictObject({
  measure: z.enum(['finished jobs', 'jobs in the lab', 'lead time']),
  part: z.string().nullable().describe('null: all parts together'),
  weeks: z
    .array(
      heldAgainstSchema.extend({
        week: z.int().describe('Judged week, from 1'),
        usualLow: z
          .number()
          .nullable()
          .describe('Lower edge of what is usual in this week alone; null: of one part'),
        usualHigh: z.number().nullable(),
      }),
    )
    .describe('Weeks that have no value, as the lead time of a week in which no job came, are left out'),
});
export type HeldWeeks = z.infer<typeof heldWeeksSchema>;

/** Where a job spends its time between two moments of its route that the log knows. */
export const heldStageSchema = z.strictObject({
  part: z.string(),
  stage: z.string().describe('Name in the scenario'),
  logged: z.string().describe('Name in the log'),
  what: z
    .enum(['waiting before', 'at the stage', 'work', 'up to its end'])
    .describe(
      'From the moment before to its start; from its start to its end; the same without breaks; or from the moment before to its end, where the log knows no start',
    ),
  jobs: z.int().describe('Judged jobs of which the log knows both moments'),
  observed: z.number().describe('Hours by the clock, average'),
  expected: z.number(),
  usualLow: z.number().describe('In nine of ten replications it lies between these'),
  usualHigh: z.number(),
  standsOut: z
    .boolean()
    .describe(
      'Of work: further from the replications than chance takes any of these averages in 19 of 20 uses (normal theory)',
    ),
});
export type HeldStage = z.infer<typeof heldStageSchema>;

/** One part type, held against what happened. */
export const heldPartSchema = z.strictObject({
  part: z.string(),
  jobs: z.int().describe('Judged jobs'),
  leadTime: heldAgainstSchema.describe('Average, hours by the clock'),
  p90: heldAgainstSchema.nullable().describe('Hours by the clock; null: fewer than ten jobs'),
  onTime: heldAgainstSchema.nullable().describe('Share of jobs; null: the log has no promises'),
  outcome: z.enum(['as modelled', 'slower', 'faster', 'otherwise']),
  cause: z.string().nullable().describe('What is likely behind it; null: nothing to explain'),
});
export type HeldPart = z.infer<typeof heldPartSchema>;

/** How often the check would see something that takes longer than modelled. */
export const wouldSeeSchema = z.strictObject({
  what: z.string(),
  factor: z.number().describe('How many times as long it takes'),
  seen: z.int().describe('Logs of such a lab that contradict the model'),
  of: z.int().describe('Logs that were made of it'),
  low: z.number().describe('Lower end of the 95 % interval of the share (exact)'),
  high: z.number(),
});
export type WouldSee = z.infer<typeof wouldSeeSchema>;

/** Jobs of the log that were not played, or not judged. */
export const leftOutSchema = z.strictObject({
  why: z.enum(['unknown part', 'cancelled', 'finish not known', 'after the judged weeks']),
  what: z.string().describe('In words, with what to do about it'),
  jobs: z.int(),
  rows: z.array(z.int()).describe('Rows of the log, the first of them'),
});
export type LeftOut = z.infer<typeof leftOutSchema>;

/** A model played with what a lab was asked for, held against what became of it. */
export const replayAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek replay'),
    version: z.literal(REPLAY_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    scenario: answeredScenarioSchema.describe('As it was played: it starts when the log does'),
    run: z.strictObject({
      seed: z.string(),
      replications: z.int(),
      playedFrom: z.string().describe('Monday from which it is played, empty'),
      playedWeeks: z.int(),
      loggedDurations: z.array(z.string()).describe('Stages whose durations were taken from the log'),
    }),
    log: z.strictObject({
      name: z.string(),
      from: z.string(),
      until: z.string(),
      jobs: z.int().describe('Jobs that were played'),
      leftOut: z.array(leftOutSchema),
    }),
    judged: z.strictObject({
      from: z.string().describe('First day of the first judged week'),
      weeks: z.int(),
      jobs: z.int().describe('Judged jobs that came in these weeks'),
      learnedUntil: z.string().nullable().describe('Up to this day the scenario was learned from the log'),
    }),
    test: z.strictObject({
      falseAlarmRate: z
        .number()
        .describe('In at most this share of uses a model that is right is called contradicted'),
      pValue: z
        .number()
        .describe('Share of replications and what happened that are at least as extreme as what happened'),
      isContradicted: z.boolean(),
      families: z.array(
        z.strictObject({
          what: z.string(),
          places: z.int().describe('Numbers that are looked at'),
          isLeft: z.boolean().describe('Whether what happened leaves the band here'),
        }),
      ),
    }),
    weeksWithin: z
      .strictObject({
        weeks: z.int(),
        of: z.int(),
        low: z.int(),
        high: z.int(),
        usual: z.number().describe('Share of weeks that are as usual in the model'),
      })
      .describe('Judged weeks in which everything is as usual; and how many the model makes one expect'),
    series: z.array(heldWeeksSchema),
    leadTimes: z
      .array(heldAgainstSchema.extend({ share: z.number() }))
      .describe('This share of the jobs took at most so many hours by the clock'),
    onTime: heldAgainstSchema.nullable().describe('Share of the jobs; null: the log has no promises'),
    parts: z.array(heldPartSchema),
    stages: z.array(heldStageSchema).describe('Empty where the log knows no times of stages'),
    wouldSee: z.array(wouldSeeSchema).describe('Empty where it was not asked for'),
    verdict: z.array(z.string()),
    cautions: z.array(cautionSchema),
    warnings: z.array(z.string()),
  })
  .describe('A lab model held against what happened');
export type ReplayAnswer = z.infer<typeof replayAnswerSchema>;
