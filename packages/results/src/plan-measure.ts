import { z } from 'zod';
import { estimateOrRefusedSchema } from './estimate.ts';

/** What a measure of a plan is given in; shares are 0 to 1, money is in the currency of the scenario. */
export const measureUnitSchema = z.enum([
  'hours',
  'share',
  'jobs',
  'pieces per week',
  'hours per week',
  'money per year',
  'money per piece',
  'money',
]);
export type MeasureUnit = z.infer<typeof measureUnitSchema>;

/** The measure by which plans are first compared: hours within which nine of ten jobs of a period are finished. */
export const SPEED_MEASURE = 'nine of ten jobs within';

/** The measure of what a finished piece costs, where the scenario speaks of money. */
export const PIECE_COST_MEASURE = 'cost of a finished piece';

/** What a plan comes to in one respect. */
export const planMeasureSchema = z.strictObject({
  name: z.string(),
  unit: measureUnitSchema,
  better: z.enum(['lower', 'higher', 'neither']),
  value: estimateOrRefusedSchema,
});
export type PlanMeasure = z.infer<typeof planMeasureSchema>;
