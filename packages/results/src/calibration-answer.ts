import { z } from 'zod';

/** Version of the document that says how print times were fitted to measured builds. */
export const CALIBRATION_ANSWER_VERSION = 1;

/** How far estimates are off, as shares of what was measured. */
export const estimateErrorsSchema = z.strictObject({
  median: z.number().describe('Half of the builds are off by less'),
  largest: z.number().describe('No build is off by more'),
});
export type EstimateErrors = z.infer<typeof estimateErrorsSchema>;

/** One parameter of a build time model, as fitted. */
export const calibratedParameterSchema = z.strictObject({
  name: z.string().describe('Key in the build time model of the lab'),
  label: z.string().describe('What it is, in plain words'),
  unit: z.string(),
  value: z.number(),
  standardError: z.number().nullable().describe('In the unit of the value; null when nothing was fitted'),
  now: z.number().describe('What the scenario has'),
  usual: z
    .strictObject({ low: z.number(), typical: z.number(), high: z.number() })
    .describe('Over machines of all sizes'),
  isUsual: z.boolean().describe('Whether the value lies in the usual range'),
  origin: z
    .enum(['fitted', 'in ratio', 'start value', 'zero'])
    .describe(
      'fitted: from the builds; in ratio: one factor for several parameters; start value: the builds say nothing of it; zero: the builds would put it below zero',
    ),
});
export type CalibratedParameter = z.infer<typeof calibratedParameterSchema>;

/** One build as it was measured, and as it is estimated. */
export const calibratedBuildSchema = z.strictObject({
  name: z.string(),
  line: z.int().describe('Line of its first row in the file'),
  pieces: z.int(),
  height: z.number().describe('mm; without bedding'),
  measuredHours: z.number(),
  estimatedHours: z.number().describe('With the fitted parameters'),
  estimatedHoursNow: z.number().describe('With the parameters that the scenario has'),
  fits: z.boolean().describe('Whether the packer of this program gets its pieces into one build'),
});
export type CalibratedBuild = z.infer<typeof calibratedBuildSchema>;

/** What measured builds say of the print times of a machine group. */
export const calibrationAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek calibration'),
    version: z.literal(CALIBRATION_ANSWER_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    lab: z.string(),
    machines: z.string().describe('Machine group'),
    model: z.enum(['extrusion', 'mask', 'laser vat', 'powder bed', 'volume and height']),
    parameters: z.array(calibratedParameterSchema),
    spread: z
      .strictObject({
        value: z.number(),
        low: z.number(),
        high: z.number().nullable().describe('null: over 10, so few builds say nothing of it'),
        level: z.number().describe('Confidence that it lies between low and high'),
        now: z.number().describe('What the scenario has'),
      })
      .describe('Coefficient of variation of measured over estimated print hours'),
    explained: z
      .number()
      .nullable()
      .describe('Share of the variance of the print hours; null when all builds took the same time'),
    degreesOfFreedom: z.int().describe('Builds less fitted factors'),
    errors: estimateErrorsSchema.describe('With the fitted parameters'),
    errorsNow: estimateErrorsSchema.describe('With the parameters that the scenario has'),
    builds: z.array(calibratedBuildSchema).describe('In the order of the file'),
    notToldApart: z.array(
      z.strictObject({
        parameters: z.array(z.string()).describe('Keys in the build time model'),
        text: z.string().describe('What this means, and what to measure'),
      }),
    ),
    verdict: z.array(z.string()).describe('How good the fit is, in a few sentences'),
    warnings: z.array(z.string()),
    lines: z.array(z.string()).describe('To write in the scenario under the machine group'),
    doubt: z
      .string()
      .nullable()
      .describe(
        'To write in the scenario under "doubts"; null: the builds say too little, or leave no doubt',
      ),
  })
  .describe('The parameters of a build time model fitted to builds that a lab has measured');
export type CalibrationAnswer = z.infer<typeof calibrationAnswerSchema>;
