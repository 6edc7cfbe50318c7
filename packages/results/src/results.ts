import type { Lab } from '@buildweek/model';
import { z } from 'zod';
import { buildsSchema } from './builds.ts';
import { handLeadTimeSchema } from './hand-lead-time.ts';
import {
  flowSchema,
  handLoadSchema,
  jobClassSchema,
  machineUseSchema,
  partHoursSchema,
  peopleUseSchema,
  queueSchema,
  stationUseSchema,
} from './measures.ts';
import { moneySchema } from './money.ts';
import { sentOutSchema } from './sent-out.ts';
import { targetResultSchema } from './targets.ts';
import { troubleSchema } from './trouble.ts';

/** Version of the Results document that this program writes. */
export const RESULTS_VERSION = 3;

const labSchema = z.custom<Lab>((value) => typeof value === 'object' && value !== null);

export const ignoredWeeksSchema = z.strictObject({
  weeks: z.int(),
  method: z.enum(['given', 'chosen by MSER', 'starts from the stated backlog']),
  note: z.string().describe('How the number came about; for MSER the pilot and its length'),
});
export type IgnoredWeeks = z.infer<typeof ignoredWeeksSchema>;

export const runSchema = z.strictObject({
  seed: z.string(),
  replications: z.int(),
  replicationLimit: z.int(),
  weeks: z.int().describe('Measured weeks of each replication'),
  ignoredWeeks: ignoredWeeksSchema,
  capWeeks: z.int().describe('Weeks after the measured ones in which its jobs may still finish'),
  level: z.number().describe('Confidence level of every interval'),
  stopped: z.enum([
    'number of replications reached',
    'precision reached',
    'limit reached',
    'stopped by the user',
  ]),
  precision: z
    .strictObject({
      measure: z.string(),
      asked: z.number().describe('Half width as a share of the value'),
      reached: z.number().nullable(),
    })
    .nullable(),
});
export type Run = z.infer<typeof runSchema>;

export const assumptionSchema = z.strictObject({
  what: z.string().describe('Place in the scenario, as "machines / resin / warm-up"'),
  value: z.string(),
  source: z.enum([
    'stated in the scenario',
    'measured from a mesh',
    'default of the program',
    'default of a machine class',
  ]),
  line: z.int().nullable().describe('Line of the scenario file, when stated'),
});
export type Assumption = z.infer<typeof assumptionSchema>;

export const cautionSchema = z.strictObject({ topic: z.string(), text: z.string() });
export type Caution = z.infer<typeof cautionSchema>;

export const lawCheckSchema = z.strictObject({
  law: z.enum([
    "Little's law",
    'balance of machine states',
    'balance of station states',
    'balance of person states',
    'work and waits make the lead time',
  ]),
  replications: z.int(),
  largestDifferenceHours: z.number(),
  holds: z.boolean(),
});
export type LawCheck = z.infer<typeof lawCheckSchema>;

/** The document that a run leaves behind. `report` needs nothing else. */
export const resultsSchema = z
  .strictObject({
    format: z.literal('buildweek results'),
    version: z.literal(RESULTS_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    scenario: z.strictObject({
      name: z.string(),
      text: z.string().describe('The scenario file as it was read'),
      hash: z.string().describe('SHA-256 of the text, hexadecimal'),
      files: z
        .array(z.strictObject({ path: z.string(), text: z.string() }))
        .default([])
        .describe(
          'Other files that the scenario names, by their path as it is written; meshes are not among them',
        ),
    }),
    lab: labSchema.describe('The lab as understood: plain data, times in hours'),
    run: runSchema,
    headline: z.array(z.string()).describe('The answer in a few sentences, most important first'),
    targets: z.array(targetResultSchema).describe('In the order of the scenario'),
    jobs: z.array(jobClassSchema),
    flow: flowSchema,
    queues: z.array(queueSchema),
    hours: z.array(partHoursSchema),
    machines: z.array(machineUseSchema),
    builds: z.array(buildsSchema).describe('Machine groups whose builds follow from the shapes of parts'),
    stations: z.array(stationUseSchema),
    people: z.array(peopleUseSchema),
    trouble: troubleSchema,
    sentOut: z
      .array(sentOutSchema)
      .describe('All jobs, then each part type that a rule may send out; empty without such a rule'),
    money: moneySchema.nullable().describe('Null when the scenario says nothing of money'),
    handCalculation: z.array(handLoadSchema),
    handLeadTimes: z
      .array(handLeadTimeSchema)
      .describe('Rough lead times by formulas, all part types first; empty when nothing is asked for'),
    assumptions: z.array(assumptionSchema),
    cautions: z.array(cautionSchema),
    checks: z.array(lawCheckSchema),
    warnings: z.array(z.string()),
  })
  .describe('Results of a Buildweek run');
export type Results = z.infer<typeof resultsSchema>;
