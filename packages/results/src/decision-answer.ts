import { z } from 'zod';
import { planRunSchema } from './answer-parts.ts';
import { planPairSchema } from './comparison-answer.ts';
import { doubtsAnswerSchema } from './doubts-answer.ts';
import { estimateOrRefusedSchema } from './estimate.ts';
import { planAnswerSchema, targetOfPlanSchema } from './plan-answer.ts';
import { measureUnitSchema, planMeasureSchema } from './plan-measure.ts';
import { cautionSchema, resultsSchema } from './results.ts';

/** Version of the document that leadership decides by. */
export const DECISION_VERSION = 1;

/** One of the few plans among which is decided. */
export const decisionOptionSchema = z.strictObject({
  role: z
    .enum(['today', 'recommended', 'cheaper', 'faster'])
    .describe(
      'recommended: the cheapest that meets the targets, or what comes closest to them; cheaper: costs less and misses by least; faster: one more of what gains most',
    ),
  name: z.string(),
  changes: z
    .array(z.string())
    .describe('What differs from the scenario, each as --with takes it; empty for today'),
  meets: z.enum(['met', 'missed', 'undecided', 'not tested']).describe('Its targets, all together'),
  why: z.string().describe('Why it is not the recommendation; empty for the recommendation'),
  committedCost: z.number().nullable().describe('A year, known beforehand; null without money'),
  purchase: z.number().nullable().describe('To be bought; null without money'),
  targets: z.array(targetOfPlanSchema),
  measures: z.array(planMeasureSchema),
});
export type DecisionOption = z.infer<typeof decisionOptionSchema>;

/** One of the three numbers that matter. */
export const keyNumberSchema = z.strictObject({
  subject: z.enum(['promise', 'cost', 'payback', 'speed']),
  label: z.string().describe('What it is, in a few words'),
  unit: z.union([measureUnitSchema, z.literal('years')]),
  value: estimateOrRefusedSchema.describe('With the recommendation'),
  today: estimateOrRefusedSchema.nullable().describe('Without it; null when today is recommended'),
  asked: z.number().nullable().describe('Where a target asks for it'),
  note: z.string().describe('What belongs to the number, in a sentence; may be empty'),
});
export type KeyNumber = z.infer<typeof keyNumberSchema>;

/** What is proposed, what it brings and costs, what else could be done, and how sure all that is. */
export const decisionAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek decision'),
    version: z.literal(DECISION_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    scenarioName: z.string(),
    currency: z.string().nullable(),
    question: z.string(),
    proposal: z.string().describe('The recommendation in one sentence'),
    reasons: z.array(z.string()).describe('What it brings, what it costs, how sure, most important first'),
    run: planRunSchema.describe('How the options were compared'),
    keyNumbers: z.array(keyNumberSchema),
    options: z.array(decisionOptionSchema).describe('Today first, each role at most once'),
    pairs: z
      .array(planPairSchema)
      .describe('Options against each other on the same random numbers, by their names'),
    differencesLevel: z
      .number()
      .describe('Confidence level of each single difference, so that all hold at once'),
    today: resultsSchema.describe('The lab as it is'),
    recommended: resultsSchema.nullable().describe('The lab that is recommended; null when it is today’s'),
    search: planAnswerSchema.nullable().describe('How the plan was found; null where nothing may vary'),
    doubts: doubtsAnswerSchema
      .nullable()
      .describe('What could go wrong with the recommendation; null where no doubts are stated'),
    cautions: z.array(cautionSchema),
    warnings: z.array(z.string()),
  })
  .describe('The decision: what is proposed, with its options, their differences and the reasons');
export type DecisionAnswer = z.infer<typeof decisionAnswerSchema>;
