import { z } from 'zod';
import { answeredScenarioSchema, byHandSchema, planRunSchema } from './answer-parts.ts';
import { estimateOrRefusedSchema } from './estimate.ts';
import { cautionSchema } from './results.ts';
import { targetVerdictSchema } from './targets.ts';

/** Version of the document that says until when a lab is large enough. */
export const GROWTH_VERSION = 1;

/** What becomes of one target at one level of demand. */
export const targetAtLevelSchema = z.strictObject({
  share: estimateOrRefusedSchema.describe('What the target is about, in the long run'),
  verdict: targetVerdictSchema,
  confidence: z.number().describe('One-sided confidence that it is met, 0 to 1; near 0: that it is missed'),
});
export type TargetAtLevel = z.infer<typeof targetAtLevelSchema>;

/** The lab in one month, as if that month’s demand went on for ever. */
export const growthMonthSchema = z.strictObject({
  month: z.int().describe('0 is the demand that the scenario states'),
  label: z.string().describe('As "2027-05"'),
  demand: z.number().describe('Of all demand as stated, 1 for as much'),
  targets: z.array(targetAtLevelSchema).describe('In the order of the targets'),
});
export type GrowthMonth = z.infer<typeof growthMonthSchema>;

/** One more machine, station or person. */
export const growthStepSchema = z.strictObject({
  name: z.string().describe('As "one more resin machine"'),
  kind: z.enum(['machines', 'stations', 'people']),
  group: z.string(),
  price: z.number().nullable().describe('In the currency of the scenario; null: not stated, or a person'),
  perYear: z.number().nullable().describe('What it costs in a year; null: not stated'),
  targets: z.array(targetAtLevelSchema).describe('In the month in which it is needed'),
  gain: estimateOrRefusedSchema.describe(
    'How much the first missed target gains, on the same random numbers; the interval allows for looking at several',
  ),
  restores: z.enum(['yes', 'no', 'not decided']).describe('Whether all targets are met again'),
  holdsUntil: z
    .int()
    .nullable()
    .describe('Last month up to which no target is missed with it; null: it does not restore them'),
  leadWeeks: z.number().describe('From the order until it works: delivery, commissioning, ramp-up'),
  orderBy: z.string().describe('Date, as 2027-09-01'),
  isLate: z.boolean().describe('Whether that date lies before the start of the plan'),
  overBudget: z.array(z.string()).describe('Budgets among the targets that it breaks'),
  months: z.array(growthMonthSchema).describe('The months with it, as far as they were played'),
});
export type GrowthStep = z.infer<typeof growthStepSchema>;

/** One purchase among several, one after the other. */
export const growthPurchaseSchema = growthStepSchema
  .omit({ targets: true, gain: true })
  .extend({ month: z.int().describe('In which a target would be missed without it') });
export type GrowthPurchase = z.infer<typeof growthPurchaseSchema>;

/** Until when a lab is large enough, and what has to be bought when. */
export const growthAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek growth'),
    version: z.literal(GROWTH_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    scenario: answeredScenarioSchema,
    run: planRunSchema,
    currency: z.string().nullable(),
    growth: z.string().describe('How demand grows, in words'),
    targets: z.array(
      z.strictObject({
        wording: z.string(),
        asked: z.number().describe('Share that is asked for, 0 to 1'),
        atMost: z.boolean().describe('Whether the share may be at most so large'),
        firstMissed: z
          .int()
          .nullable()
          .describe('First month in which it is missed with the confidence of the level'),
        lastMet: z
          .int()
          .nullable()
          .describe('Last month before that in which it is met with that confidence'),
      }),
    ),
    months: z
      .array(growthMonthSchema)
      .describe(
        'The lab as it is, when nothing is bought; it ends where all targets have been missed for some months',
      ),
    horizon: z.int().describe('Month up to which was looked'),
    neededIn: z.int().nullable().describe('First month in which a target is missed'),
    steps: z
      .array(growthStepSchema)
      .describe(
        'What one more of each brings in that month: what restores the targets first, the cheapest first',
      ),
    purchases: z
      .array(growthPurchaseSchema)
      .describe(
        'One after the other, each with all before it: the first of the steps, and when a target is missed again, what restores it',
      ),
    verdict: z.array(z.string()),
    byHand: byHandSchema,
    assumptions: z.array(z.string()),
    cautions: z.array(cautionSchema),
    warnings: z.array(z.string()),
  })
  .describe('What becomes of a lab whose demand grows');
export type GrowthAnswer = z.infer<typeof growthAnswerSchema>;
