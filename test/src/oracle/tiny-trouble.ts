import type {
  AttendedWork,
  Breakdown,
  BuildFailure,
  Chore,
  EquipmentConditions,
  HourSpan,
  Noticing,
  Repair,
} from '@buildweek/model';
import fc from 'fast-check';
import { onDays, takes } from './small-lab.ts';
import { tinyHands, tinyWork } from './tiny-duration.ts';

/** What goes wrong with machines and stations: all of it at constant distances, as the oracle draws nothing. */

const ALL_DAYS = [0, 1, 2, 3, 4, 5, 6];

const constantHours = (...minutes: number[]) =>
  fc.constantFrom(...minutes).map((length) => ({ kind: 'constant' as const, value: length / 60 }));

const repair: fc.Arbitrary<Repair> = fc.oneof(
  fc.record({ kind: fc.constant('own' as const), work: tinyWork }),
  fc.record({
    kind: fc.constant('service' as const),
    response: constantHours(60, 240, 17, 600),
    visit: constantHours(30, 120, 61, 300),
    calendar: fc.constantFrom(null, 'first', 'second'),
  }),
);

/** Odd numbers of minutes, so that few failures fall together with the end of something. */
const distances = {
  'running hours': constantHours(431, 199, 103, 703, 1123),
  clock: constantHours(1777, 1123, 2593, 3331, 4999),
};

const breakdown = (name: string): fc.Arbitrary<Breakdown> =>
  fc.constantFrom('running hours' as const, 'clock' as const).chain((by) =>
    fc.record({
      name: fc.constant(name),
      by: fc.constant(by),
      between: distances[by],
      effect: fc.constantFrom('loses the build' as const, 'build goes on after the repair' as const),
      repair,
    }),
  );

const breakdowns: fc.Arbitrary<Breakdown[]> = fc.oneof(
  { weight: 4, arbitrary: fc.constant<Breakdown[]>([]) },
  { weight: 4, arbitrary: breakdown('nozzle').map((one) => [one]) },
  { weight: 1, arbitrary: fc.tuple(breakdown('nozzle'), breakdown('fuse')).map((both) => [...both]) },
);

const chore = (name: string): fc.Arbitrary<Chore> =>
  fc.constantFrom('running hours' as const, 'clock' as const).chain((by) =>
    fc
      .record({
        name: fc.constant(name),
        kind: fc.constantFrom('maintenance' as const, 'test print' as const),
        by: fc.constant(by),
        every: distances[by],
        byHand: fc.option(tinyWork, { nil: null, freq: 3 }),
        alone: tinyHands,
      })
      .map(({ byHand, alone, ...more }) => ({
        ...more,
        work: byHand,
        duration: byHand === null ? alone : null,
      })),
  );

const chores: fc.Arbitrary<Chore[]> = fc.oneof(
  { weight: 5, arbitrary: fc.constant<Chore[]>([]) },
  { weight: 2, arbitrary: chore('greasing').map((one) => [one]) },
  { weight: 1, arbitrary: fc.tuple(chore('greasing'), chore('test piece')).map((both) => [...both]) },
);

const noticing: fc.Arbitrary<Noticing> = fc.constantFrom(
  { kind: 'when somebody is in' as const },
  { kind: 'when somebody is in' as const },
  { kind: 'on arrival' as const },
  { kind: 'rounds' as const, everyHours: 1 },
  { kind: 'rounds' as const, everyHours: 3 },
  { kind: 'monitored' as const },
);

/** Nights, early nights, and from Friday to Monday; some builds never find hours that are long enough. */
const unattendedHours: fc.Arbitrary<readonly HourSpan[] | null> = fc.constantFrom(
  null,
  null,
  null,
  null,
  onDays(ALL_DAYS, ['16:00', '08:00']),
  onDays([0, 1, 2, 3], ['15:30', '22:00']),
  [...onDays([0, 2], ['12:00', '09:00']), { fromHour: 4 * 24 + 12, toHour: 7 * 24 }],
);

/** Everything that is said of equipment beside its work; it is always there. */
export const tinyConditions: { [Key in keyof EquipmentConditions]: fc.Arbitrary<EquipmentConditions[Key]> } =
  {
    breakdowns,
    chores,
    noticing,
    unattendedHours,
    calendar: fc.constant(null),
  };

/**
 * Builds of a few groups all fail as soon as they print, for hours on end: a failure that comes by chance cannot
 * be foretold. Cleaning takes some time, or the machine would fail over and over within one minute.
 */
export const tinyFailure: fc.Arbitrary<BuildFailure | null> = fc.oneof(
  { weight: 12, arbitrary: fc.constant(null) },
  {
    weight: 1,
    arbitrary: fc.record({
      chancePerBuild: fc.constant(0),
      perPrintHour: fc.constant(1e12),
      loses: fc.constant('the build' as const),
      cleaning: tinyWork.map((work) => ({ ...work, duration: takes(45, 30) })),
    }),
  },
);

export const tinyFirstLayers: fc.Arbitrary<AttendedWork> = fc
  .tuple(tinyWork, fc.constantFrom(takes(15), takes(10, 20), takes(37)))
  .map(([work, duration]) => ({ ...work, persons: 1, duration }));
