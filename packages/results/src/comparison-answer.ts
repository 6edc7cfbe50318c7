import { z } from 'zod';
import { answeredScenarioSchema, planRunSchema } from './answer-parts.ts';
import { estimateOrRefusedSchema } from './estimate.ts';
import { handLoadSchema } from './measures.ts';
import { planMeasureSchema } from './plan-measure.ts';
import { cautionSchema } from './results.ts';

/** Version of the document that compares plans. */
export const COMPARISON_VERSION = 1;

export const comparedPlanSchema = z.strictObject({
  name: z.string(),
  changes: z.array(z.string()).describe('What is changed in the first scenario, in its words'),
  scenario: answeredScenarioSchema,
  measures: z.array(planMeasureSchema),
  handHours: z
    .number()
    .nullable()
    .describe('Mean lead time by the formulas of a hand calculation, hours; null: they give none'),
  handCalculation: z.array(handLoadSchema),
  handSentence: z.string().describe('Simulation and hand calculation side by side, and why they differ'),
});
export type ComparedPlan = z.infer<typeof comparedPlanSchema>;

export const planDifferenceSchema = z.strictObject({
  measure: z.string(),
  difference: estimateOrRefusedSchema.describe(
    'Plan less the one that it is compared with, in the unit of the measure; the level of its interval is corrected for the number of differences',
  ),
  outcome: z
    .enum(['better', 'worse', 'more', 'less', 'no difference', 'not told apart', 'not compared'])
    .describe('more and less: neither is better; no difference: every replication gave the same'),
  gain: z
    .number()
    .nullable()
    .describe('(var first + var second) / var(difference): what the same random numbers save'),
});
export type PlanDifference = z.infer<typeof planDifferenceSchema>;

export const planPairSchema = z.strictObject({
  plan: z.string(),
  against: z.string(),
  sentence: z.string().describe('The difference in words'),
  differences: z.array(planDifferenceSchema).describe('In the order of the measures'),
});
export type PlanPair = z.infer<typeof planPairSchema>;

/** What a change of a lab brings. */
export const comparisonAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek comparison'),
    version: z.literal(COMPARISON_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    currency: z.string().nullable(),
    run: planRunSchema,
    differencesLevel: z
      .number()
      .describe('Confidence level of each single difference, so that all hold at once'),
    plans: z.array(comparedPlanSchema).describe('The first is what all others are compared with'),
    pairs: z.array(planPairSchema),
    cautions: z.array(cautionSchema),
    warnings: z.array(z.string()),
  })
  .describe('Several plans of a lab, compared on the same random numbers');
export type ComparisonAnswer = z.infer<typeof comparisonAnswerSchema>;
