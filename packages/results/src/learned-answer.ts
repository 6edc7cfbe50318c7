import { z } from 'zod';
import { logReadingSchema } from './log-reading.ts';

/** Version of the document that says what was learned from a lab's own log. */
export const LEARNED_VERSION = 1;

const learnedIntervalSchema = z.strictObject({
  value: z.number(),
  low: z.number(),
  high: z.number(),
});

/** Something that was counted, with its exact interval. */
const learnedRateSchema = z.strictObject({
  of: z.string().describe('Group of machines'),
  counted: z.int(),
  among: z.number().describe('Runs of a share, hours of printing of a rate'),
  estimate: learnedIntervalSchema.describe('Share, or rate an hour'),
});
export type LearnedRate = z.infer<typeof learnedRateSchema>;

const curveSchema = z.array(z.strictObject({ share: z.number(), time: z.number() }));

/** Measured times of one kind, with the laws that were fitted to them. */
const learnedDurationSchema = z.strictObject({
  of: z.string().describe('Part, or group of machines'),
  stage: z.string().describe('Stage, or "print"'),
  unit: z.enum(['h', 'min']),
  per: z.enum(['build', 'job', 'part']),
  seen: z.int().describe('Times that were seen to their end'),
  censored: z.int().describe('Times of which only is known that they would have been longer'),
  quantiles: curveSchema.describe('Share of the seen times that are at most so long'),
  families: z
    .array(
      z.strictObject({
        name: z.string(),
        aic: z.number().describe('Akaike’s information criterion'),
        mean: learnedIntervalSchema,
        p95: z.number(),
        isAboutAsGood: z.boolean().describe('Whether it fits about as well as the best'),
        curve: curveSchema,
      }),
    )
    .describe('The best first; none for fewer than ten times'),
  warning: z.string().nullable(),
});
export type LearnedDuration = z.infer<typeof learnedDurationSchema>;

/** Hours of the week with one rate of requests. */
const learnedBlockSchema = z.strictObject({
  name: z.string(),
  spans: z.array(z.strictObject({ fromHour: z.number(), toHour: z.number() })).describe('Hours of the week'),
  jobs: z.int(),
  perHour: learnedIntervalSchema,
});
export type LearnedBlock = z.infer<typeof learnedBlockSchema>;

/** Requests of whole weeks, Monday to Sunday. */
const learnedWeeksSchema = z.strictObject({
  firstDay: z.string().describe('As 2026-02-16'),
  counts: z.array(z.int()),
  mean: z.number(),
  low: z.number().describe('With high: in which 95 of 100 weeks lie when each job comes by itself'),
  high: z.number(),
  dispersion: z
    .strictObject({
      index: z.number().describe('Variance over mean, 1 for Poisson counts'),
      pValue: z.number().describe('Chance of Poisson counts to vary as much'),
    })
    .nullable(),
  variation: z.number().describe('Coefficient of variation of a factor of whole weeks; 0: chance alone'),
});
export type LearnedWeeks = z.infer<typeof learnedWeeksSchema>;

/** A test of one claim about how requests come in. */
const learnedTestSchema = z.strictObject({
  name: z.string(),
  pValue: z.number(),
  finding: z.string().describe('A whole sentence'),
});

/** What was learned from a lab's own log. */
export const learnedAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek learned'),
    version: z.literal(LEARNED_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    level: z.number().describe('Of all intervals'),
    reading: logReadingSchema,
    learnedUntil: z.string().describe('Last day that was used'),
    verdict: z.array(z.string()),
    values: z.array(
      z.strictObject({
        of: z.string().describe('Part, group of machines, or "all parts"'),
        what: z.string(),
        value: z.string().describe('In the words of a scenario'),
        source: z.string().describe('What was counted, and how sure it is'),
        others: z.array(z.string()).describe('Values that fit about as well'),
      }),
    ),
    weeks: learnedWeeksSchema,
    blocks: z.array(learnedBlockSchema).nullable().describe('Null where too few jobs tell the hour'),
    tests: z.array(learnedTestSchema),
    durations: z.array(learnedDurationSchema),
    failures: z.array(learnedRateSchema),
    breakdowns: z.array(learnedRateSchema),
    scenario: z.string().describe('Text of the scenario that comes of it'),
    left: z.array(z.string()).describe('What was not taken over, whole sentences'),
  })
  .describe('What was learned from a lab’s own log');
export type LearnedAnswer = z.infer<typeof learnedAnswerSchema>;
