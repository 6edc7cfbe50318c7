import type { DemandStream, DueRule, Lab, PartType } from '@buildweek/model';
import { NO_CHANGES } from '@buildweek/model';
import fc from 'fast-check';
import { people } from './small-lab.ts';
import { tinyCalendar, tinyClockChanges } from './tiny-calendar.ts';
import { SKILLS } from './tiny-duration.ts';
import { mendWork } from './tiny-fit.ts';
import { tinyMachines, tinyStations } from './tiny-resources.ts';
import { tinyRoutes } from './tiny-route.ts';

/** Labs for the oracle and the simulator to agree on: tiny, valid, and with all rules mixed. */

const CALENDARS = ['first', 'second'] as const;

const staff = fc
  .array(
    fc.record({
      calendar: fc.constantFrom(...CALENDARS),
      skills: fc.uniqueArray(fc.constantFrom(...SKILLS), { minLength: 1, maxLength: SKILLS.length }),
      count: fc.integer({ min: 1, max: 2 }),
      graceHours: fc.constantFrom(0, 0, 0.25, 1),
    }),
    { minLength: 1, maxLength: 2 },
  )
  .map((groups) =>
    groups.map(({ skills, ...more }, index) => {
      const count = groups.length === 2 && index === 1 ? 1 : more.count;
      return people(`group ${index + 1}`, skills, { ...more, count });
    }),
  );

const dueRule: fc.Arbitrary<DueRule> = fc.oneof(
  fc.constant({ kind: 'none' as const }),
  fc.record({ kind: fc.constant('clock' as const), hours: fc.constantFrom(4, 12, 24, 48, 72) }),
  fc.record({
    kind: fc.constant('working days' as const),
    days: fc.integer({ min: 0, max: 4 }),
    cutOffHour: fc.constantFrom(null, 12, 15),
  }),
);

/** Two to twelve jobs in all, most of them on the first days and on a coarse grid, so that ties are common. */
const jobs = fc.array(
  fc.record({
    part: fc.integer({ min: 0, max: 2 }),
    quarter: fc.oneof(fc.integer({ min: 0, max: 4 * 30 }), fc.integer({ min: 0, max: 4 * 96 })),
    minute: fc.constantFrom(0, 0, 0, 7),
    quantity: fc.integer({ min: 1, max: 6 }),
    rush: fc.constantFrom(false, false, true),
  }),
  { minLength: 2, maxLength: 12 },
);

const looks = fc.array(
  fc.record({
    material: fc.constantFrom('grey', 'clear'),
    settings: fc.constantFrom('fine', 'fine', 'coarse'),
    space: fc.constantFrom(1, 1, 2, 0.5),
    due: dueRule,
    rushDue: dueRule,
  }),
  { minLength: 3, maxLength: 3 },
);

/** The arbitrary itself; every value of it is a lab that a scenario file could describe. */
export const tinyLab: fc.Arbitrary<Lab> = fc
  .record({
    calendars: fc.tuple(tinyCalendar('first'), tinyCalendar('second')),
    clockChanges: tinyClockChanges,
    people: staff,
    machines: tinyMachines,
    stations: tinyStations,
    carriers: fc.integer({ min: 1, max: 2 }),
    looks,
    routes: tinyRoutes,
    jobs,
    order: fc.shuffledSubarray(['machine', 'station', 'bench'] as const, { minLength: 3, maxLength: 3 }),
    fitOn: fc.constantFrom('typical' as const, 'typical' as const, 'drawn' as const),
    rushInterrupts: fc.constantFrom(false, true, true),
  })
  .map((recipe) => {
    const parts = recipe.routes.map(({ stages, print }, index): PartType => {
      const { material, settings, space } = recipe.looks[index] ?? {
        material: 'grey',
        settings: '',
        space: 1,
      };
      return {
        name: `part ${index + 1}`,
        route: `route ${index + 1}`,
        material,
        settings,
        space,
        print,
        stages,
      };
    });
    const demand = parts.map((part, index): DemandStream => {
      const own = recipe.jobs.filter((job) => job.part % parts.length === index);
      return {
        name: part.name,
        part: part.name,
        arrivals: {
          kind: 'dated',
          jobs: own
            .map((job) => ({
              atHour: job.quarter / 4 + job.minute / 60,
              quantity: job.quantity,
              rush: job.rush,
            }))
            .sort((one, other) => one.atHour - other.atHour),
        },
        quantity: { kind: 'fixed', value: 1 },
        rushShare: 0,
        due: recipe.looks[index]?.due ?? { kind: 'none' },
        rushDue: recipe.looks[index]?.rushDue ?? { kind: 'none' },
        changes: NO_CHANGES,
        sentOut: null,
      };
    });
    return mendWork({
      name: 'tiny lab',
      startDate: '2025-01-06',
      clockChanges: recipe.clockChanges,
      calendars: recipe.calendars,
      labCalendar: 'first',
      people: recipe.people,
      machines: recipe.machines,
      stations: recipe.stations,
      carriers: [{ name: 'platforms', count: recipe.carriers }],
      parts,
      demand,
      dispatch: {
        order: recipe.order,
        fitOn: recipe.fitOn,
        within: 'promise',
        rushInterrupts: recipe.rushInterrupts,
      },
      initialState: { jobs: [], machines: [] },
      deadlines: [],
    });
  });
