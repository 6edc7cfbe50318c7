import { FINISHES } from '../words/finish.ts';
import { counts, whole, words, wordsOrList, yesOrNo } from './keys.ts';
import { partCosts } from './money-schema.ts';
import { stationTimes } from './resources-schema.ts';
import { partShape } from './shape-schema.ts';
import { changesSchema, stageTroubles } from './trouble-schema.ts';
import { z } from './zod.ts';

const stageSchema = z
  .strictObject({
    on: words('Machines or stations where it is done', 'resin').optional(),
    ...stationTimes,
    by: words('Skill of the people who do it', 'hand work').optional(),
    takes: words(
      'How long it takes; per job unless it says per part or per build, or by the size of parts',
      '2 to 15 min per part, usually 5',
      '1 min per part plus 0.2 to 0.8 min per cm2 of support contact, usually 0.4',
    ).optional(),
    wait: words('A plain wait that needs nothing', '1 h').optional(),
    people: whole('How many people it needs at once; default 1', 1, 2).optional(),
    'may pause': yesOrNo('Whether it may stop at the end of a shift and go on later; default no').optional(),
    level: z
      .enum(['job', 'build'])
      .meta({
        description:
          'build: everything that was built together goes through together; possible directly behind the build',
      })
      .optional(),
    move: z
      .enum(['per job', 'per build'])
      .meta({
        description:
          'per job (default): parts wait here for the rest of their job; per build: they go on as they come',
      })
      .optional(),
    'for finish': wordsOrList(
      'Finishes that parts go through it for: cleaned means cleaned and smooth, "only cleaned" cleaned alone; ' +
        'default all',
      'smooth',
      'cleaned',
      'only as printed',
    ).optional(),
    'empties carrier': yesOrNo('Whether the carrier of the build is free when this stage ends').optional(),
    ...stageTroubles,
  })
  .meta({ description: 'One step: by (hands), on (a machine or station), wait or ask requester' });

export const routesSchema = z
  .record(z.string(), z.array(z.record(z.string(), stageSchema)))
  .meta({ description: 'Routes: lists of stages, in order' });

export const partsSchema = z
  .record(
    z.string(),
    z.strictObject({
      route: words('Name of its route', 'resin part'),
      material: words('Parts of one material share a build; default standard', 'grey').optional(),
      settings: words(
        'Parts with the same settings share a build; default standard',
        '0.1 mm layers',
      ).optional(),
      ...partShape,
      ...partCosts,
      finish: z
        .enum(FINISHES)
        .meta({ description: 'How it is finished; stages say for which finish they are; default cleaned' })
        .optional(),
      fits: words('How many fill a build', '24 per build').optional(),
      space: words('Share of a build that one takes, instead of fits', '2.5 % of a build').optional(),
      print: words(
        'Print time',
        '3 h per build',
        '20 min per part',
        '2 h per build plus 5 min per part',
      ).optional(),
      times: z
        .record(
          z.string(),
          z.union([
            z.string(),
            z.strictObject({
              takes: words('How long the stage takes for this part', '3 min per part').optional(),
              load: words('How long loading takes', '3 min').optional(),
              unload: words('How long unloading takes', '3 min').optional(),
            }),
          ]),
        )
        .meta({
          description: 'Times of its own at stages of the route',
          examples: [{ sand: '5 min per part' }],
        })
        .optional(),
    }),
  )
  .meta({ description: 'Part types' });

const SENT_OUT_WHEN = ['always', 'more than 12 jobs wait or a promise is at risk', 'never'] as const;
const SENT_OUT_TAKES = ['4 to 9 working days, usually 6', '2 to 6 days, usually 4'] as const;

export const sentOutSchema = z
  .strictObject({
    takes: words('How long jobs are away, in working days or by the clock', ...SENT_OUT_TAKES).optional(),
    when: words(
      'When; for every demand that says nothing of its own; default never',
      ...SENT_OUT_WHEN,
    ).optional(),
  })
  .meta({ description: 'Work that is made outside' });

const sentOutOfDemand = z
  .union([
    z.string(),
    z.strictObject({
      when: words('When', ...SENT_OUT_WHEN).optional(),
      takes: words('How long jobs are away; default as for all jobs', ...SENT_OUT_TAKES).optional(),
    }),
  ])
  .meta({
    description: 'When its jobs are made outside; default as for all jobs',
    examples: ['always', { when: 'more than 12 jobs wait', takes: '4 to 9 working days, usually 6' }],
  });

const datedJob = z.union([
  z.string(),
  z.strictObject({
    at: words('When it arrives', '2027-03-01 09:00'),
    pieces: whole('How many parts; drawn as for any job when not given', 1, 4).optional(),
    rush: yesOrNo('Whether it is a rush job; drawn when not given').optional(),
  }),
]);

export const demandSchema = z
  .record(
    z.string(),
    z.strictObject({
      part: words('Part type; default the name of the demand', 'lens ring').optional(),
      jobs: words('How many jobs arrive, at random moments', '14 per week').optional(),
      every: words('Time between arrivals, day and night', '2 h', 'exponential mean 5 h').optional(),
      dates: z
        .union([z.string(), z.array(datedJob)])
        .meta({
          description: 'Jobs with known dates, or the file that lists them: date, pieces, rush or normal',
          examples: [['2027-03-01 09:00'], 'from orders.csv'],
        })
        .optional(),
      'kept in the lab': words(
        'How many jobs there always are: whoever leaves is replaced at once',
        '4 jobs',
      ).optional(),
      'jobs at once': counts('How many jobs arrive together; default 1').optional(),
      when: z
        .union([z.string(), z.record(z.string(), z.number())])
        .meta({
          description:
            'When in the week jobs arrive: name of hours, any time, or spans with weights; default lab hours',
          examples: ['day', 'any time', { 'mon 08:00-12:00': 2, 'tue-fri 08:00-16:00': 1 }],
        })
        .optional(),
      growth: words('Compound growth; default 0 % per month', '2 % per month').optional(),
      'varies from week to week': words(
        'How much whole weeks differ beyond chance: standard deviation of a factor on each week, which all demands share; default 0 %',
        '30 %',
      ).optional(),
      pieces: counts('Parts of a job; default 1').optional(),
      promise: words('What is promised; default none', '3 working days', '48 h').optional(),
      rush: words('Share of rush jobs; default 0 %', '15 %').optional(),
      'rush promise': words('What is promised to rush jobs; default the same', '1 working day').optional(),
      'cut-off': words('Files after this time count for the next working day', '14:00').optional(),
      ...changesSchema,
      'sent out': sentOutOfDemand.optional(),
    }),
  )
  .meta({
    description: 'What is asked for: a name (that of a part type, or any with "part") and how it arrives',
  });

export const atTheStartSchema = z
  .strictObject({
    now: words(
      'When this holds, in the middle of a plan too; default its start',
      '2027-03-03 09:30',
    ).optional(),
    jobs: z
      .array(
        z.strictObject({
          name: words('What it is called; default by its number', 'R-1042').optional(),
          demand: words('Name of its demand', 'lens ring'),
          pieces: whole('How many parts; default 1', 1, 4).optional(),
          stage: words('Stage at which it waits or is worked on', 'wash'),
          remaining: words('How much of this stage is left; default: it waits for it', '20 min').optional(),
          in: words('Machine that holds it', 'resin 2').optional(),
          arrived: words('When it arrived; default at the start, or now', '2027-02-26 10:00').optional(),
          due: words('When it is promised; default no promise', '2027-03-03 15:30').optional(),
          rush: yesOrNo('Whether it is a rush job; default no').optional(),
        }),
      )
      .meta({ description: 'Jobs that are there' })
      .optional(),
    machines: z
      .record(
        z.string(),
        z.strictObject({
          'busy until': words('When its build ends and waits to be unloaded', '2027-03-01 09:30'),
          material: words('What is loaded', 'grey').optional(),
        }),
      )
      .meta({ description: 'Machines that hold a build, by name and number' })
      .optional(),
  })
  .meta({ description: 'What stands in the lab when the plan starts, or now; default nothing' });
