import { MACHINE_CLASSES } from '../classes/machine-classes.ts';
import { STATION_CLASSES } from '../classes/station-classes.ts';
import { hoursReference } from './hours-schema.ts';
import { attendedWork, whole, words, wordsOrList, yesOrNo } from './keys.ts';
import { equipmentCosts, hourlyCosts } from './money-schema.ts';
import { shapedBuilds } from './shape-schema.ts';
import { absenceSchema, machineConditions, stationConditions } from './trouble-schema.ts';
import { z } from './zod.ts';

export const peopleSchema = z
  .record(
    z.string(),
    z.strictObject({
      count: whole('How many persons; default 1', 0, 2).optional(),
      hours: hoursReference.optional(),
      skills: wordsOrList('What they can do', 'run machines'),
      'other duties': words(
        'Share of their hours for meetings, ordering, advice; default 0 %',
        '12 %',
      ).optional(),
      grace: words(
        'How long work that may not pause may overrun the end of a shift; default 0 min',
        '15 min',
      ).optional(),
      ...absenceSchema,
      ...hourlyCosts,
    }),
  )
  .meta({ description: 'Groups of people who share skills and hours' });

const materialChangeSchema = z.strictObject({
  from: words('Material before; default any', 'black', 'any').optional(),
  to: words('Material after; default any', 'white', 'any').optional(),
  takes: words('How long the change takes', '15 min'),
  attended: yesOrNo('Whether it needs hands (it then lengthens the set-up); default yes').optional(),
});

export const machinesSchema = z
  .record(
    z.string(),
    z.strictObject({
      class: z
        .enum([...MACHINE_CLASSES.keys()])
        .meta({ description: 'A generic class whose times stand in for keys that are not written' })
        .optional(),
      process: z
        .enum(['MEX', 'VPP', 'PBF', 'other'])
        .meta({ description: 'Process class; default other' })
        .optional(),
      count: whole(
        'How many machines that are alike; 0: none yet, all that needs them is sent out; default 1',
        0,
        3,
      ).optional(),
      holds: words('How much one build holds, when parts do not say how many fit', '24 parts').optional(),
      'jobs per build': whole('Most jobs that share a build; default as many as fit', 1, 1).optional(),
      ...shapedBuilds,
      by: words('Skill of the people who run it; default run machines', 'run machines').optional(),
      prepare: attendedWork(
        'File preparation of a build, before set-up',
        '10 to 60 min, usually 20',
      ).optional(),
      'set-up': attendedWork('Attended work before a build', '5 to 20 min, usually 10').optional(),
      'material change': z
        .union([z.string(), materialChangeSchema, z.array(materialChangeSchema)])
        .meta({
          description:
            'What it takes to go from one material to another; in a list the first that matches counts',
          examples: ['5 to 15 min, usually 8'],
        })
        .optional(),
      loaded: words(
        'Material at the start of the plan; default none, and the first build pays no change',
        'black',
      ).optional(),
      'warm-up': words('Unattended, before the print', '0.5 to 3 h, usually 1', 'none').optional(),
      'cool-down': z
        .union([
          z.string(),
          z.strictObject({
            takes: words('How long it cools', '4 to 20 h, usually 10', '2 h plus 0.06 h per mm').optional(),
            where: z
              .enum(['machine', 'outside'])
              .meta({
                description:
                  'outside: the build unit is taken out first and frees the machine; default machine',
              })
              .optional(),
          }),
        ])
        .meta({
          description: 'Unattended, after the print; perhaps more for each mm of the height of the build',
          examples: ['4 to 20 h, usually 10', '2 h plus 0.06 h per mm'],
        })
        .optional(),
      unload: attendedWork('Attended work after a build', '2 to 10 min, usually 5').optional(),
      start: words(
        'When a build is started; default at once',
        'when 60 % full or after 4 h or before closing',
        'mon-fri at 15:00',
      ).optional(),
      carrier: words('Name of the carriers of which a build holds one', 'tanks').optional(),
      ...machineConditions,
      ...equipmentCosts,
    }),
  )
  .meta({ description: 'Groups of machines that are alike' });

/** What can be said of a station, and of a stage at one. */
export const stationTimes = {
  takes: words(
    'How long it runs; per batch unless it says per job, per part or per build, or by the size of parts',
    '10 to 20 min per batch',
    '0.2 min per cm2 of surface',
  ).optional(),
  load: attendedWork('Attended work before the run', '3 min').optional(),
  unload: attendedWork('Attended work after the run', '3 min').optional(),
  by: words('Skill of the people who load, unload or stay', 'hand work').optional(),
  attended: yesOrNo(
    'Whether somebody stays while it runs; default: yes when "by" is given and neither load nor unload',
  ).optional(),
  people: whole('How many people an attended run needs; default 1', 1, 2).optional(),
  'may pause': yesOrNo('Whether an attended run may stop at the end of a shift; default no').optional(),
};

export const stationsSchema = z
  .record(
    z.string(),
    z.strictObject({
      class: z
        .enum([...STATION_CLASSES.keys()])
        .meta({ description: 'A generic class whose times stand in for keys that are not written' })
        .optional(),
      count: whole(
        'How many stations that are alike; 0: none yet, all that needs them is sent out; default 1',
        0,
        2,
      ).optional(),
      holds: words(
        'How much one batch holds; default 1 job; a volume is that of the boxes around the parts',
        '20 parts',
        '2 jobs',
        '2 builds',
        '4 litres',
      ).optional(),
      start: words('When a batch is started; default at once', 'when 50 % full or after 1 h').optional(),
      ...stationTimes,
      ...stationConditions,
      ...equipmentCosts,
    }),
  )
  .meta({ description: 'Groups of stations that are alike: wash, cure, blast' });

export const carriersSchema = z
  .record(z.string(), whole('How many there are', 1, 4))
  .meta({ description: 'Tanks, platforms, removable build units, baskets: name and number' });
