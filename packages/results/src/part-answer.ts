import { z } from 'zod';
import { stepHoursSchema } from './measures.ts';

/** Version of the document that answers for one part. */
export const PART_ANSWER_VERSION = 1;

/** The value of the play in the middle, and what nine of ten plays stay above and below. */
export const spreadSchema = z
  .strictObject({
    typical: z.number().describe('Half of the plays are below'),
    low: z.number().describe('One play in ten is below'),
    high: z.number().describe('One play in ten is above'),
  })
  .describe('A value with its spread over plays; not a confidence interval');
export type Spread = z.infer<typeof spreadSchema>;

export const askedMomentSchema = z.strictObject({
  label: z.string().describe('As "Monday 09:00"'),
  hour: z.number().describe('Hours since Monday 00:00, local time'),
});
export type AskedMoment = z.infer<typeof askedMomentSchema>;

/** One stretch of the way from the design to the finished part. */
export const partStretchSchema = z.strictObject({
  stage: z.string(),
  phase: stepHoursSchema.shape.phase,
  attended: z.boolean(),
  kind: z.enum(['work', 'wait']).describe('wait: nobody is there, or nobody is free'),
  fromHour: z.number().describe('Hours since the job was asked for'),
  toHour: z.number(),
});
export type PartStretch = z.infer<typeof partStretchSchema>;

export const timelineSchema = z.strictObject({
  asked: z.string().describe('Label of the moment'),
  stretches: z.array(partStretchSchema),
  hours: z.number().describe('Until the part is finished'),
  attendedHours: z.number().describe('Hours of people'),
  unattendedHours: z.number().describe('Hours in which it goes on by itself'),
  closedHours: z.number().describe('Hours in which it waits for somebody to come'),
});
export type Timeline = z.infer<typeof timelineSchema>;

export const quantityTimesSchema = z.strictObject({
  quantity: z.int(),
  finished: z
    .array(z.strictObject({ asked: z.string(), hours: spreadSchema }))
    .describe('Hours until the last piece is finished, for each moment of asking'),
  hoursPerPart: spreadSchema.describe(
    'Hours until all are finished, over their number; first moment of asking',
  ),
  minutesOfPeoplePerPart: spreadSchema,
  builds: z.int().describe('Builds in the play in the middle'),
});
export type QuantityTimes = z.infer<typeof quantityTimesSchema>;

/** One way of making the part: a route of the lab. */
export const wayOfMakingSchema = z.strictObject({
  route: z.string(),
  process: z.enum(['MEX', 'VPP', 'PBF', 'other']),
  machines: z.string().describe('Machine group'),
  machineCount: z.int(),
  size: z
    .strictObject({ width: z.number(), depth: z.number(), height: z.number() })
    .describe('As it stands, mm'),
  orientation: z.string().describe('How it stands, and why'),
  mostPerBuild: z.int(),
  printHoursOfOne: z.number(),
  printHoursOfFull: z.number().describe('Print hours of a full build'),
  timelines: z.array(timelineSchema).describe('One piece, for each moment of asking: the play in the middle'),
  quantities: z.array(quantityTimesSchema),
  curve: z
    .array(z.strictObject({ quantity: z.int(), hours: z.number(), minutesOfPeople: z.number() }))
    .describe(
      'Hours until all are finished and minutes of people in all, each of the play in its middle; first moment of asking',
    ),
});
export type WayOfMaking = z.infer<typeof wayOfMakingSchema>;

export const overtakingSchema = z.strictObject({
  slower: z.string().describe('Route that is ahead for fewer pieces'),
  faster: z.string().describe('Route that is ahead from the quantity on'),
  quantity: z.int().describe('From so many pieces on, by the plays in the middle'),
  low: z.int().describe('In one play of ten already from so many on, or fewer'),
  high: z.int().nullable().describe('In one play of ten only from so many on, or more; null: not at all'),
});
export type Overtaking = z.infer<typeof overtakingSchema>;

/** Which process for this part, and how many pieces make the difference. */
export const partAnswerSchema = z
  .strictObject({
    format: z.literal('buildweek part'),
    version: z.literal(PART_ANSWER_VERSION),
    program: z.strictObject({ name: z.literal('buildweek'), version: z.string() }),
    part: z.strictObject({
      name: z.string(),
      finish: z.string(),
      volume: z.number().describe('mm3'),
      surface: z.number().describe('mm2'),
      notes: z.array(z.string()).describe('What was found when the part was measured'),
    }),
    lab: z.strictObject({ name: z.string(), isTypical: z.boolean().describe('No scenario was given') }),
    seed: z.string(),
    plays: z.int().describe('Plays behind every spread'),
    asked: z.array(askedMomentSchema),
    ways: z.array(wayOfMakingSchema).describe('In the order of the routes of the lab'),
    impossible: z.array(z.strictObject({ route: z.string(), reason: z.string() })),
    overtakings: z.array(overtakingSchema),
    verdict: z.array(z.string()).describe('The answer in a few sentences'),
    assumptions: z.array(z.string()),
    cautions: z.array(z.strictObject({ topic: z.string(), text: z.string() })),
  })
  .describe('What one part costs in hours on each process of a lab');
export type PartAnswer = z.infer<typeof partAnswerSchema>;
