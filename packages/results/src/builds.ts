import { z } from 'zod';
import { estimateOrRefusedSchema, estimateSchema } from './estimate.ts';

/** Builds of a machine group that were packed and timed from the shapes of their parts. */
export const buildsSchema = z.strictObject({
  group: z.string(),
  kind: z.enum(['platform', 'powder bed']),
  mostHeight: z.number().describe('Height of the build space, mm'),
  partsPerBuild: estimateOrRefusedSchema,
  meanFill: estimateOrRefusedSchema.describe(
    'Share of the platform that boxes with their spacing take; for powder, share of the height of the bed',
  ),
  meanHeight: estimateOrRefusedSchema.describe('Height of a build, mm'),
  packingDensity: estimateOrRefusedSchema.describe(
    'Share of the part cake that is part; refused without powder',
  ),
  powder: z
    .strictObject({
      virgin: estimateSchema.describe('Virgin powder that builds are filled with'),
      used: estimateSchema.describe('Used powder that builds are filled with'),
      returned: estimateSchema.describe('Powder that comes back out of the cake as used powder'),
      inParts: estimateSchema.describe('Powder that has become parts'),
      surplus: estimateSchema.describe(
        'Returned less used: what the stock of used powder grows by; below 0 it runs out',
      ),
    })
    .nullable()
    .describe('kg per week; null without powder'),
});
export type Builds = z.infer<typeof buildsSchema>;
