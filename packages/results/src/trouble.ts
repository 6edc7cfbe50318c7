import { z } from 'zod';
import { estimateSchema } from './estimate.ts';

/** What stopped the machines or stations of a group. */
export const equipmentTroubleSchema = z.strictObject({
  group: z.string(),
  kind: z.enum(['machine', 'station']),
  count: z.int(),
  breakdownsPerWeek: estimateSchema.describe('Of the whole group'),
  failedBuildsPerWeek: estimateSchema.describe('Builds lost to failures and breakdowns, of the whole group'),
  hoursDownPerWeek: estimateSchema.describe('From failure to repair, of the whole group'),
  hoursOfMaintenancePerWeek: estimateSchema.describe(
    'Planned maintenance and test prints, waiting for it included',
  ),
});
export type EquipmentTrouble = z.infer<typeof equipmentTroubleSchema>;

/** What happened to the jobs of a part type. */
export const partTroubleSchema = z.strictObject({
  part: z.string(),
  repeatedPartsPerWeek: estimateSchema.describe('Made again after a failed build or a rejection'),
  cancelledJobsPerWeek: estimateSchema.describe('Withdrawn by their requesters'),
  waitedTooLong: z
    .array(z.strictObject({ stage: z.string(), jobsPerWeek: estimateSchema }))
    .describe('Waited longer before the stage than they should; only stages where it happened'),
});
export type PartTrouble = z.infer<typeof partTroubleSchema>;

export const troubleSchema = z
  .strictObject({
    equipment: z.array(equipmentTroubleSchema).describe('Groups in which anything happened'),
    parts: z.array(partTroubleSchema).describe('Part types to which anything happened'),
  })
  .describe('What went wrong');
export type Trouble = z.infer<typeof troubleSchema>;
