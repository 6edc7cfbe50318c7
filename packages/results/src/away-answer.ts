import { z } from 'zod';
import { answeredScenarioSchema, byHandSchema, planRunSchema } from './answer-parts.ts';
import { estimateOrRefusedSchema } from './estimate.ts';
import { bandSchema } from './measures.ts';
import { cautionSchema } from './results.ts';

/** Version of the document that says what an absence does. */
export const AWAY_VERSION = 1;

/** A measure with everybody there, with one away, and what that makes. */
export const besideSchema = z.strictObject({
  there: estimateOrRefusedSchema.describe('With everybody there as stated'),
  away: estimateOrRefusedSchema.describe('With one person away'),
  difference: estimateOrRefusedSchema.describe('Away minus there, on the same random numbers'),
});
export type Beside = z.infer<typeof besideSchema>;

/** What it does when one person of a group is away. */
export const awayGroupSchema = z.strictObject({
  group: z.string(),
  count: z.int().describe('Persons of the group, with the one who is away'),
  onTime: z
    .strictObject({ before: besideSchema, during: besideSchema, after: besideSchema })
    .nullable()
    .describe('Share of the jobs on time, by the week in which they come; null: nothing is promised'),
  recovery: z
    .strictObject({
      weeks: z.int().nullable().describe('Weeks after the return; null: not in the weeks that were played'),
      low: z.int().nullable(),
      high: z.int().nullable(),
    })
    .describe(
      'Until the jobs in the lab are back within the normal band, by the average and by its interval',
    ),
  mostExtraJobs: estimateOrRefusedSchema.describe(
    'Jobs in the lab beyond those with everybody there, in the worst week',
  ),
  jobsInLab: bandSchema.describe('By measured week, with one person away'),
  onTimeByWeek: bandSchema.nullable().describe('Share on time of the jobs that come in each week'),
});
export type AwayGroup = z.infer<typeof awayGroupSchema>;

/** What becomes of a lab while one person is away, and how long it takes to recover. */
export const awayAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek away'),
    version: z.literal(AWAY_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    scenario: answeredScenarioSchema,
    run: planRunSchema,
    startDate: z.string(),
    fromWeek: z.int().describe('First measured week of the absence'),
    awayWeeks: z.int(),
    normalBand: z.string().describe('What counts as back to normal'),
    differencesLevel: z.number().describe('Confidence level of each single difference'),
    there: z.strictObject({
      jobsInLab: bandSchema,
      onTimeByWeek: bandSchema.nullable(),
      most: z.array(z.number()).describe('Upper end of the normal band, jobs in the lab by week'),
    }),
    groups: z.array(awayGroupSchema).describe('In the order of the scenario'),
    verdict: z.array(z.string()),
    byHand: byHandSchema,
    cautions: z.array(cautionSchema),
    warnings: z.array(z.string()),
  })
  .describe('What an absence does to a lab, and how long recovery takes');
export type AwayAnswer = z.infer<typeof awayAnswerSchema>;
