import { z } from 'zod';
import { estimateOrRefusedSchema, estimateSchema, predictionOrRefusedSchema } from './estimate.ts';

/** What money goes to. */
export const COST_KINDS = [
  'equipment',
  'upkeep',
  'people',
  'overtime',
  'material',
  'outside',
  'other',
] as const;
export type CostKind = (typeof COST_KINDS)[number];

export const committedCostSchema = z
  .strictObject({
    perYear: z.number(),
    equipment: z.array(
      z.strictObject({
        group: z.string(),
        count: z.int(),
        capitalPerYear: z
          .number()
          .describe('Purchase and interest over its life less what it is worth at the end, in equal amounts'),
        upkeepPerYear: z.number(),
      }),
    ),
    people: z.array(
      z.strictObject({
        group: z.string(),
        count: z.int(),
        hoursPerYear: z.number().describe('Of the roster, of all persons of the group together'),
        perYear: z.number(),
      }),
    ),
    otherPerYear: z.number(),
  })
  .describe('What the lab costs in a year whatever it does; known before anything is played');
export type CommittedCost = z.infer<typeof committedCostSchema>;

export const purchaseSchema = z.strictObject({
  group: z.string(),
  count: z.int().describe('To be bought, beyond what is owned'),
  amount: z.number().describe('For all of them'),
  leadWeeks: z.number().describe('Delivery and commissioning'),
});
export type Purchase = z.infer<typeof purchaseSchema>;

export const costLineSchema = z.strictObject({
  perYear: estimateSchema,
  perPart: estimateOrRefusedSchema.describe('For each finished part, those made outside with them'),
  perJob: estimateOrRefusedSchema,
});
export type CostLine = z.infer<typeof costLineSchema>;

export const costOfKindSchema = costLineSchema.extend({ kind: z.enum(COST_KINDS) });
export type CostOfKind = z.infer<typeof costOfKindSchema>;

export const businessCaseSchema = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('compared'),
      years: z.int().describe('Over which it is judged'),
      interest: z.number(),
      paybackWithinYears: z.number(),
      outsidePerYear: estimateSchema.describe('What the same finished parts would cost outside'),
      savedPerYear: estimateSchema.describe(
        'By the lab in a year in which all equipment is there, before purchases',
      ),
      netPresentValue: estimateSchema.describe(
        "Student's interval of the average over replications, each taken as what every year is like",
      ),
      paybackYears: estimateOrRefusedSchema.describe(
        'Median over replications, without interest, each taken as what every year is like',
      ),
      paidBackInTime: estimateOrRefusedSchema.describe('Share of replications, exact interval'),
      internalRate: estimateOrRefusedSchema.describe('Median over replications'),
    })
    .describe('The lab against sending everything out'),
  z.strictObject({ kind: z.literal('not compared'), reason: z.string() }),
]);
export type BusinessCase = z.infer<typeof businessCaseSchema>;

export const moneySchema = z
  .strictObject({
    currency: z.string(),
    committed: committedCostSchema,
    purchases: z.array(purchaseSchema),
    costs: z.array(costOfKindSchema).describe('Kinds that cost nothing are left out'),
    total: costLineSchema,
    perPartOnePeriod: predictionOrRefusedSchema.describe('What a finished part may cost in one period'),
    repeats: costLineSchema.describe('Of the material: that of parts which had to be made again'),
    case: businessCaseSchema,
    notContained: z.array(z.string()).describe('What the amounts leave out, a sentence each'),
  })
  .describe('What the lab costs and what it is worth');
export type Money = z.infer<typeof moneySchema>;
