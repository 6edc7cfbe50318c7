import { z } from 'zod';

/** A number with the confidence it deserves. */
export const estimateSchema = z
  .strictObject({
    kind: z.literal('estimate'),
    value: z.number().describe('Point estimate'),
    low: z.number().describe('Lower end of the confidence interval'),
    high: z.number().describe('Upper end of the confidence interval'),
    level: z.number().describe('Confidence level, 0 to 1'),
    replications: z.int().describe('Independent replications behind it'),
  })
  .describe('An estimate of a long-run value with its confidence interval');
export type Estimate = z.infer<typeof estimateSchema>;

/** A number that is not given, and why. */
export const refusedSchema = z
  .strictObject({ kind: z.literal('refused'), reason: z.string() })
  .describe('No estimate is given, for the stated reason');
export type Refused = z.infer<typeof refusedSchema>;

/** A value later than everything: more jobs than the percentile allows were unfinished at the cap. */
export const neverSchema = z
  .strictObject({ kind: z.literal('never'), reason: z.string() })
  .describe('The value lies beyond the end of the plan');
export type Never = z.infer<typeof neverSchema>;

export const estimateOrRefusedSchema = z.discriminatedUnion('kind', [
  estimateSchema,
  refusedSchema,
  neverSchema,
]);
export type EstimateOrRefused = z.infer<typeof estimateOrRefusedSchema>;

/** What one run of the measured weeks may bring: holds one future period with the given probability. */
export const predictionSchema = z
  .strictObject({
    kind: z.literal('prediction'),
    low: z.number(),
    high: z.number(),
    level: z.number().describe('Probability that one future period lies between low and high'),
    replications: z.int(),
  })
  .describe('A prediction interval for one period of the measured length');
export type Prediction = z.infer<typeof predictionSchema>;

export const predictionOrRefusedSchema = z.discriminatedUnion('kind', [
  predictionSchema,
  refusedSchema,
  neverSchema,
]);
export type PredictionOrRefused = z.infer<typeof predictionOrRefusedSchema>;
