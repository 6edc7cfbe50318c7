import { PRECISION_MEASURES } from '@buildweek/model';
import { TARGET_FORMS } from '../words/target.ts';
import { hoursSchema } from './hours-schema.ts';
import { nameOrNumber, whole, words, wordsOrList, yesOrNo } from './keys.ts';
import { materialsSchema, moneySchema } from './money-schema.ts';
import { carriersSchema, machinesSchema, peopleSchema, stationsSchema } from './resources-schema.ts';
import { staffSchema } from './staff-schema.ts';
import { atTheStartSchema, demandSchema, partsSchema, routesSchema, sentOutSchema } from './work-schema.ts';
import { z } from './zod.ts';

/** Version of the scenario format that this program reads. */
export const SCENARIO_VERSION = 1;

const simulateSchema = z
  .strictObject({
    weeks: whole('Measured weeks of each replication; default 13', 1, 13).optional(),
    'ignored weeks': z
      .union([z.int().min(0), z.literal('auto')])
      .meta({
        description: 'Weeks before the measured ones that are left out; default auto: chosen from a pilot',
      })
      .optional(),
    'weeks to finish': whole(
      'Weeks after the measured ones in which their jobs may still finish; default 13',
      0,
      13,
    ).optional(),
    seed: nameOrNumber(
      'Any word: the same seed gives the same answer; default buildweek',
      'spring',
    ).optional(),
    replications: whole(
      'How often the weeks are played; default 100 when no precision is asked for',
      1,
      100,
    ).optional(),
    precision: words(
      `Play until the interval is this narrow; of ${PRECISION_MEASURES.join(', ')}`,
      '5 % of p90 lead time',
    ).optional(),
    'at most': whole(
      'Largest number of replications when a precision is asked for; default 1000',
      20,
      1000,
    ).optional(),
    level: words('Confidence level of every interval; default 95 %', '95 %').optional(),
  })
  .meta({ description: 'How the scenario is played' });

const dispatchSchema = z
  .strictObject({
    order: z
      .array(z.enum(['machines', 'stations', 'benches']))
      .meta({
        description: 'Which waiting work is done first, after rush; default machines, stations, benches',
      })
      .optional(),
    'fit on': z
      .enum(['typical', 'drawn'])
      .meta({
        description:
          'Whether work that may not pause is fitted into the shift by its typical or its drawn time; default typical',
      })
      .optional(),
    within: z
      .enum(['promise', 'shortest work'])
      .meta({
        description:
          'Within a kind, after rush: the earliest promise first, or the least work; default promise',
      })
      .optional(),
    'rush interrupts': yesOrNo('Whether rush jobs may interrupt work that may pause; default no').optional(),
  })
  .meta({ description: 'Which work is done first' });

const doubtsSchema = z
  .record(
    z.string(),
    words('How far it may lie from what the scenario says', '80 to 130 %', '90 to 140 %, usually 110'),
  )
  .meta({
    description:
      'What is not known for certain: demand, print times, breakdowns, failed builds, rejects, absence, share of rush, perhaps "of" a name; "times of" a skill, a stage or attended work',
    examples: [{ demand: '80 to 130 %', 'times of hand work': '90 to 140 %' }],
  });

/** Structure of a scenario file. What the worded values mean is read after it. */
export const scenarioSchema = z
  .strictObject({
    buildweek: z.literal(SCENARIO_VERSION).meta({ description: 'Version of the format' }),
    name: nameOrNumber(
      'What the plan is called; default the name of the file',
      'Housings, spring quarter',
    ).optional(),
    starts: words('Monday on which the plan starts; default 2024-01-01', '2027-03-01').optional(),
    zone: words('Time zone; default none: no clock changes', 'Europe/Lisbon').optional(),
    simulate: simulateSchema.optional(),
    hours: hoursSchema.optional(),
    'lab hours': words(
      'Hours whose days are working days and whose end closes the day; default the first',
      'day',
    ).optional(),
    'cut-off': words(
      'Files after this time count for the next working day; default none',
      '14:00',
    ).optional(),
    people: peopleSchema.optional(),
    machines: machinesSchema.optional(),
    stations: stationsSchema.optional(),
    carriers: carriersSchema.optional(),
    routes: routesSchema,
    parts: partsSchema,
    demand: demandSchema,
    'sent out': sentOutSchema.optional(),
    dispatch: dispatchSchema.optional(),
    money: moneySchema.optional(),
    materials: materialsSchema.optional(),
    'at the start': atTheStartSchema.optional(),
    targets: wordsOrList(
      'What is promised of the lab, a sentence each; behind it perhaps "in 90 % of quarters", else the long run counts',
      ...TARGET_FORMS,
      '95 % of jobs within 5 working days in 90 % of quarters',
    ).optional(),
    'may vary': z
      .record(z.string(), words('A range, or values with "or" between them', '1 to 4', 'day or evening'))
      .meta({
        description:
          'What may be chosen when a plan is looked for: machines, stations, people and carriers by name, or the place of any value',
      })
      .optional(),
    doubts: doubtsSchema.optional(),
    staff: staffSchema.optional(),
  })
  .meta({
    title: 'Buildweek scenario',
    description: 'A print lab, the parts that are asked of it, and how it is played',
  });
