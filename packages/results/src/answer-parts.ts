import { z } from 'zod';
import { ignoredWeeksSchema } from './results.ts';

/** The scenario that an answer is about. */
export const answeredScenarioSchema = z.strictObject({
  name: z.string(),
  text: z.string(),
  hash: z.string().describe('SHA-256 of the text'),
});
export type AnsweredScenario = z.infer<typeof answeredScenarioSchema>;

/** How plans were played. */
export const planRunSchema = z.strictObject({
  seed: z.string(),
  replications: z.int().describe('Of each plan; the same random numbers for all'),
  weeks: z.int().describe('Measured weeks of each replication'),
  ignoredWeeks: ignoredWeeksSchema,
  capWeeks: z.int(),
  level: z.number().describe('Confidence level of the whole answer'),
});
export type PlanRun = z.infer<typeof planRunSchema>;

/** What arithmetic says of the question that was played. */
export const byHandSchema = z
  .array(z.string())
  .describe('What a page of arithmetic says of the same question, and why playing says something else');
