import { z } from 'zod';
import { refusedSchema } from './estimate.ts';

/** A rough lead time from formulas of waiting. */
export const handEstimateSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('by hand'),
    leadTimeHours: z.number().describe('The sum of the others'),
    stageHours: z.number().describe('Hours of the stages, one after the other'),
    troubleHours: z.number().describe('Further hours for breakdowns and builds in vain'),
    requesterHours: z.number().describe('Waiting for answers of requesters'),
    batchHours: z.number().describe('Until a build or batch is complete'),
    equipmentHours: z.number().describe('Waiting for machines and stations'),
    peopleHours: z.number().describe('Waiting for people, in hours in which somebody is on duty'),
  }),
  refusedSchema,
]);
export type HandEstimate = z.infer<typeof handEstimateSchema>;

/** What the hours of a job are spent on, as far as simulation and formulas can be held against each other. */
export const COMPARED_HOURS = [
  'stages',
  'people',
  'equipment',
  'equipment down',
  'batch',
  'carrier',
  'requester',
  'rest of the job',
] as const;
export const comparedHoursSchema = z.strictObject({
  what: z.enum(COMPARED_HOURS).describe('people: for a person or for a shift to begin'),
  simulated: z.number().describe('Hours per finished job'),
  byHand: z.number().describe('Hours; 0 where the formulas know of no such thing'),
});
export type ComparedHours = z.infer<typeof comparedHoursSchema>;

/** How a simulated lead time differs from the one by hand. */
export const handDifferenceSchema = z.strictObject({
  ratio: z.number().describe('Simulated over by hand: above 2 or below 0.5'),
  sentence: z.string(),
  hours: z
    .array(comparedHoursSchema)
    .describe('Where the difference comes from, the largest in its direction first'),
});
export type HandDifference = z.infer<typeof handDifferenceSchema>;

export const handLeadTimeSchema = z.strictObject({
  part: z.string().nullable().describe('Part type; null: all, by their jobs'),
  estimate: handEstimateSchema,
  difference: handDifferenceSchema
    .nullable()
    .describe(
      'Null where simulation and formulas agree within a factor of two, or one of them has no figure',
    ),
});
export type HandLeadTime = z.infer<typeof handLeadTimeSchema>;

/** Why simulation and formulas differ, each said once: where there is one part type, not for all jobs as well. */
export function differenceSentences(leadTimes: readonly HandLeadTime[]): string[] {
  const told = leadTimes.length === 2 ? leadTimes.filter(({ part }) => part !== null) : leadTimes;
  return told.flatMap(({ difference }) => (difference === null ? [] : [difference.sentence]));
}
