import { attendedWork, whole, words, wordsOrList, yesOrNo } from './keys.ts';
import { z } from './zod.ts';

const called = words('Name, when there are several', 'nozzle').optional();
const every = words(
  'Time from the end of one to the next, "of running" or "by the clock"; "about" is random with this mean',
  'about 250 h of running',
  '4 weeks by the clock',
);

const repairSchema = z
  .union([
    words('How long a repair by your own people takes', '0.5 to 6 h, usually 1.5'),
    z.strictObject({
      by: words('Skill of the people who repair; default those who run it', 'run machines').optional(),
      takes: words('How long it takes; it may pause', '0.5 to 6 h, usually 1.5').optional(),
      people: whole('How many people it needs at once; default 1', 1, 2).optional(),
    }),
  ])
  .meta({
    description: 'Repair by your own people; it goes before rush',
    examples: ['0.5 to 6 h, usually 1.5'],
  });

const serviceSchema = z
  .strictObject({
    response: words('From the call until somebody comes', '8 to 72 h, usually 24').optional(),
    takes: words('How long the visit takes', '1 to 4 h, usually 2').optional(),
    hours: words(
      'Name of hours; response and visit pass only in these; default always',
      'day',
      'always',
    ).optional(),
  })
  .meta({ description: 'Repair by a visit, which holds none of your people' });

function breaksDown(effect: Readonly<Record<string, z.ZodOptional<z.ZodType>>>) {
  const one = z.strictObject({
    called,
    every: every.optional(),
    repair: repairSchema.optional(),
    service: serviceSchema.optional(),
    ...effect,
  });
  return z.union([z.string(), one, z.array(one)]).meta({
    description:
      'How often it breaks down, who repairs it, and what becomes of what runs; never, one, or a list. ' +
      'Default never, or what the class says; one that is written takes what it leaves open from the class',
    examples: [
      'never',
      { every: 'about 250 h of running', repair: { by: 'run machines', takes: '0.5 to 6 h, usually 1.5' } },
    ],
  });
}

function chores(description: string, example: { every: string; takes: string }) {
  const one = z.strictObject({
    called,
    every: every.optional(),
    takes: words('How long it takes', example.takes).optional(),
    attended: yesOrNo(
      'Whether it needs hands; default: yes for maintenance, for test prints only when "by" is given',
    ).optional(),
    by: words('Skill of the people who do it; default those who run it', 'run machines').optional(),
    people: whole('How many people it needs at once; default 1', 1, 2).optional(),
    'may pause': yesOrNo('Whether it may stop at the end of a shift and go on later; default yes').optional(),
  });
  return z.union([z.string(), one, z.array(one)]).meta({ description, examples: ['none', example] });
}

/** What can be said of any machine or station beside its work. */
const conditions = {
  maintenance: chores('What is due from time to time; none, one, or a list. Default none, or the class', {
    every: '200 h of running',
    takes: '1 h',
  }).optional(),
  'test prints': chores('Runs that are for nobody; none, one, or a list; default none', {
    every: '4 weeks by the clock',
    takes: '3 h',
  }).optional(),
  noticed: words(
    'How people learn that it has stopped or ended; default when somebody is in',
    'when somebody is in',
    'on arrival',
    'on rounds every 2 h',
    'monitored',
  ).optional(),
  available: words(
    'Name of the hours in which it is there (borrowed, shared); default always',
    'day',
    'always',
  ).optional(),
  'runs alone': wordsOrList(
    'When it may run with nobody there; default always',
    'always',
    'never',
    'mon-thu 16:00-07:00',
    'fri 16:00 to mon 07:00',
  ).optional(),
};

export const machineConditions = {
  ...conditions,
  'breaks down': breaksDown({
    build: z
      .enum(['is lost', 'goes on'])
      .meta({ description: 'What becomes of a build that prints; a finished one is spared; default is lost' })
      .optional(),
  }).optional(),
  fails: z
    .union([
      z.string(),
      z.strictObject({
        chance: words('How often', '5 % of builds', '5 % of builds plus 0.2 % per print hour').optional(),
        loses: z
          .enum(['the build', 'one job'])
          .meta({ description: 'What is lost; default the build' })
          .optional(),
        cleaning: attendedWork(
          'Attended work behind a lost build, in place of unloading; default none',
          '10 to 30 min, usually 15',
        ).optional(),
      }),
    ])
    .meta({
      description: 'Builds that do not come out; default never, or what the class says',
      examples: ['5 % of builds', 'never', '5 % of builds plus 0.2 % per print hour'],
    })
    .optional(),
  'first layers': attendedWork(
    'The beginning of the print that somebody watches, a part of the print time; default none',
    '10 min',
  ).optional(),
};

export const stationConditions = {
  ...conditions,
  'breaks down': breaksDown({
    batch: z
      .enum(['starts again', 'goes on'])
      .meta({ description: 'What becomes of a batch that runs; default starts again' })
      .optional(),
  }).optional(),
};

/** When people are not there although their hours say so. */
export const absenceSchema = {
  leave: z
    .union([
      z.string(),
      z.array(z.string()),
      z.record(z.string(), wordsOrList('Days', '2027-04-05 to 2027-04-16')),
    ])
    .meta({
      description: 'Leave: dates, or for several people their numbers with dates; default none',
      examples: ['2027-04-05 to 2027-04-16', { '2': '2027-04-05 to 2027-04-16' }],
    })
    .optional(),
  absent: words(
    'Absence by chance as a share of the days of work of each person, in spells; default never',
    '3 % of days',
    '3 % of days, 1 to 5 days at a time',
  ).optional(),
};

/** What may go wrong at a stage. */
export const stageTroubles = {
  rejects: words(
    'Share of parts found bad at its end ("usual": that of the machine class), and the stage where ' +
      'replacements start (default the build); default none',
    '4 % back to build',
    'usual back to build',
  ).optional(),
  'at most': words(
    'The longest that parts should wait between the stage before and this one; exceeding it is counted',
    '2 h after wash',
  ).optional(),
  'ask requester': words(
    'Share of jobs that wait here for an answer, which takes so long, day and night',
    '20 % of jobs',
  ).optional(),
};

/** What requesters do to jobs that they have asked for. */
export const changesSchema = {
  cancels: changeOfMind('Jobs that are withdrawn; default never'),
  revises: changeOfMind('Jobs that start again with a changed file; default never'),
};

function changeOfMind(description: string) {
  return z
    .union([
      z.string(),
      z.strictObject({
        chance: words('Share of jobs', '3 %').optional(),
        after: words('Time after the arrival', '2 to 72 h, usually 24').optional(),
        'only before start': yesOrNo(
          'Whether it only happens while nothing is started; default no',
        ).optional(),
      }),
    ])
    .meta({ description, examples: ['3 % after 2 to 72 h, usually 24', '3 % after 24 h, only before start'] })
    .optional();
}
