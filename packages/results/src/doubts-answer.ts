import { z } from 'zod';
import { answeredScenarioSchema, byHandSchema, planRunSchema } from './answer-parts.ts';
import { estimateOrRefusedSchema, estimateSchema } from './estimate.ts';
import { measureUnitSchema } from './plan-measure.ts';
import { cautionSchema } from './results.ts';

/** Version of the document that says which assumptions matter. */
export const DOUBTS_VERSION = 1;

export const doubtEndSchema = z.strictObject({
  factor: z.number().describe('Of what the scenario says, 1 for as it says'),
  value: estimateOrRefusedSchema.describe('Of the measure, when only this is changed'),
  difference: estimateOrRefusedSchema.describe(
    'From the lab as stated, on the same random numbers; the level of its interval allows for looking at several',
  ),
  outcome: z.enum(['differs', 'no difference', 'not told apart', 'not compared']),
});
export type DoubtEnd = z.infer<typeof doubtEndSchema>;

export const doubtAnswerSchema = z.strictObject({
  name: z.string(),
  low: doubtEndSchema,
  typical: z.number().describe('Factor that is thought most probable'),
  high: doubtEndSchema,
  effect: z
    .number()
    .nullable()
    .describe('Larger of the two differences without its sign, in the unit of the measure; null: not known'),
  explains: estimateOrRefusedSchema.describe(
    'Share of the variance of the measure over the drawn worlds that it explains by itself',
  ),
});
export type DoubtAnswer = z.infer<typeof doubtAnswerSchema>;

export const heldTargetSchema = z.strictObject({
  target: z.string(),
  asStated: estimateSchema.describe('Share of the quarters of the lab as stated in which it holds'),
  inWorlds: estimateSchema.describe('Share of the drawn worlds, with one quarter each, in which it holds'),
});
export type HeldTarget = z.infer<typeof heldTargetSchema>;

/** Which assumptions matter. */
export const doubtsAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek doubts'),
    version: z.literal(DOUBTS_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    scenario: answeredScenarioSchema,
    run: planRunSchema,
    worlds: z.int().describe('Drawn worlds, each played for one period'),
    differencesLevel: z
      .number()
      .describe('Confidence level of each single difference, so that all hold at once'),
    measure: z.strictObject({
      name: z.string(),
      unit: measureUnitSchema,
      better: z.enum(['lower', 'higher', 'neither']),
      asStated: estimateOrRefusedSchema,
      isRanked: z
        .boolean()
        .describe('Whether ranks were explained instead, because some worlds lie beyond what was played'),
    }),
    doubts: z.array(doubtAnswerSchema).describe('The largest effect first'),
    explainedTogether: estimateOrRefusedSchema.describe(
      'Share of the variance that all doubts explain, each in proportion; the rest is chance and interplay',
    ),
    held: z.array(heldTargetSchema),
    allHeld: heldTargetSchema
      .nullable()
      .describe('All targets at once; null where there is only one, or none'),
    verdict: z.array(z.string()).describe('The answer in a few sentences'),
    byHand: byHandSchema,
    assumptions: z.array(z.string()),
    cautions: z.array(cautionSchema),
    warnings: z.array(z.string()),
  })
  .describe('Which assumptions of a scenario matter, and whether the plan still holds');
export type DoubtsAnswer = z.infer<typeof doubtsAnswerSchema>;
