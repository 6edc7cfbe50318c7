import { z } from 'zod';
import { estimateOrRefusedSchema, estimateSchema } from './estimate.ts';

/** How much is made outside instead of in the lab. */
export const sentOutSchema = z.strictObject({
  part: z.string().nullable().describe('Part type; null: all, those that are never sent out included'),
  jobs: z.int().describe('Jobs of the cohort, over all replications, without those that were cancelled'),
  sentOut: z.int().describe('Of these, made outside'),
  share: estimateOrRefusedSchema.describe('Share of jobs that are made outside; refused without jobs'),
  jobsPerWeek: estimateSchema.describe('Jobs that come back from outside'),
  partsPerWeek: estimateSchema.describe('Parts that come back from outside'),
});
export type SentOut = z.infer<typeof sentOutSchema>;
