import { z } from 'zod';
import { estimateSchema, neverSchema, refusedSchema } from './estimate.ts';

/** A number that is known without playing anything. */
export const knownSchema = z
  .strictObject({ kind: z.literal('known'), value: z.number() })
  .describe('A value that follows from the scenario, without any uncertainty');
export type Known = z.infer<typeof knownSchema>;

export const targetVerdictSchema = z
  .enum(['met', 'missed', 'not decided'])
  .describe('Not decided: the replications do not tell with the confidence of the level');
export type TargetVerdict = z.infer<typeof targetVerdictSchema>;

/** What a run says of one target of the scenario. */
export const targetResultSchema = z.strictObject({
  wording: z.string().describe('As it is written in the scenario'),
  meaning: z.string().describe('What it means, in one sentence'),
  kind: z.enum(['share within', 'on time', 'busy', 'budget', 'cost per part']),
  currency: z
    .string()
    .nullable()
    .describe('Of amounts that are asked for and found; null: these are shares from 0 to 1'),
  bound: z.enum(['at least', 'at most']),
  asked: z.number(),
  found: z
    .discriminatedUnion('kind', [estimateSchema, refusedSchema, neverSchema, knownSchema])
    .describe('The same in the long run, with its two-sided interval'),
  periods: z
    .strictObject({
      asked: z.number().describe('Share of periods that have to meet it'),
      found: estimateSchema.describe('Share of the periods played that did, with its exact interval'),
    })
    .nullable()
    .describe('For a target on the chance that a period of the measured length meets it; else null'),
  verdict: targetVerdictSchema,
  confidence: z
    .strictObject({ met: z.number(), missed: z.number() })
    .nullable()
    .describe(
      'Highest one-sided confidence levels at which the replications say that it is met, and missed; no probabilities that it is. Null where it is known, or nothing can be said',
    ),
  level: z.number().describe('Confidence from which on it is called met or missed'),
});
export type TargetResult = z.infer<typeof targetResultSchema>;
