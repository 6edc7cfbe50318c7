import { z } from 'zod';
import { answeredScenarioSchema } from './answer-parts.ts';
import { planDifferenceSchema } from './comparison-answer.ts';
import { estimateOrRefusedSchema } from './estimate.ts';
import { handLoadSchema } from './measures.ts';
import { planMeasureSchema } from './plan-measure.ts';
import { cautionSchema, ignoredWeeksSchema } from './results.ts';

/** Version of the document that answers how many of what. */
export const PLAN_ANSWER_VERSION = 1;

export const planChoiceSchema = z.strictObject({ what: z.string(), value: z.string() });
export type AnsweredChoice = z.infer<typeof planChoiceSchema>;

export const targetOfPlanSchema = z.strictObject({
  target: z.string().describe('As it is worded in the scenario'),
  asked: z.number().describe('Share that is asked for, 0 to 1'),
  better: z.enum(['higher', 'lower']).describe('higher: at least what is asked; lower: at most'),
  value: estimateOrRefusedSchema.describe('Share that was found'),
  verdict: z.enum(['met', 'missed', 'undecided', 'not tested']),
});
export type TargetOfPlan = z.infer<typeof targetOfPlanSchema>;

/** A plan that is shown, with what it comes to. */
export const shownPlanSchema = z.strictObject({
  name: z.string(),
  role: z
    .enum([
      'chosen',
      'today',
      'near miss',
      'next below',
      'undecided',
      'one more',
      'one fewer',
      'along the way',
    ])
    .describe(
      'near miss: missed its targets by least; next below: missed, and costs next less than the answer',
    ),
  choices: z.array(planChoiceSchema),
  isToday: z.boolean(),
  committedCost: z.number().nullable().describe('A year, known beforehand'),
  purchase: z.number().nullable(),
  verdict: z.enum(['met', 'missed', 'undecided', 'not tested']),
  why: z.string().describe('Why it is not the answer, or what it changes; empty for the answer itself'),
  replications: z.int(),
  targets: z.array(targetOfPlanSchema),
  measures: z.array(planMeasureSchema),
  handHours: z
    .number()
    .nullable()
    .describe('Mean lead time by the formulas of a hand calculation, hours; null: they give none'),
  againstChosen: z
    .array(planDifferenceSchema)
    .describe('This plan less the chosen one, on the same random numbers; empty where there is none'),
});
export type ShownPlan = z.infer<typeof shownPlanSchema>;

/** Every plan that was played, in the order in which it was looked at. */
export const lookedPlanSchema = z.strictObject({
  name: z.string(),
  committedCost: z.number().nullable(),
  verdict: z.enum(['met', 'missed', 'undecided', 'beaten', 'left']),
  replications: z.int(),
  by: z.string().describe('The target that was missed, or the plan that is better; empty when neither'),
});
export type LookedPlan = z.infer<typeof lookedPlanSchema>;

/** How many of what, at what cost, and how sure. */
export const planAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek plan'),
    version: z.literal(PLAN_ANSWER_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    scenario: answeredScenarioSchema,
    currency: z.string().nullable(),
    question: z.string(),
    promise: z.string().describe('How sure the answer is, and what counts as right'),
    headline: z.array(z.string()),
    run: z.strictObject({
      seed: z.string(),
      weeks: z.int(),
      ignoredWeeks: ignoredWeeksSchema,
      capWeeks: z.int(),
      level: z.number().describe('Confidence level of intervals'),
      replications: z.int().describe('Replications used, of all plans together'),
    }),
    varied: z.array(z.strictObject({ what: z.string(), choices: z.string(), today: z.string() })),
    plans: z.int().describe('Plans that the choices make'),
    ruledOut: z.array(z.strictObject({ reason: z.string(), plans: z.int(), example: z.string() })),
    notLookedAt: z.int().describe('Dearer plans than the answer, which were not played'),
    chosen: z.string().nullable(),
    shown: z.array(shownPlanSchema),
    frontier: z.array(z.string()).describe('Plans of which no cheaper one is faster, cheapest first'),
    looked: z.array(lookedPlanSchema),
    handSentence: z.string().describe('Simulation and hand calculation side by side, and why they differ'),
    fewestByHand: z
      .array(
        z.strictObject({
          name: z.string(),
          belowOne: z.int().nullable().describe('Fewest with a load below 100 %'),
          comfortable: z.int().nullable().describe('Fewest with a load below 85 %'),
        }),
      )
      .describe('What a page of arithmetic would have answered'),
    handCalculation: z.array(handLoadSchema).describe('Loads of the answer, or of today when there is none'),
    cautions: z.array(cautionSchema),
    warnings: z.array(z.string()),
  })
  .describe('The cheapest plan that meets the targets, or the best within a budget');
export type PlanAnswer = z.infer<typeof planAnswerSchema>;
