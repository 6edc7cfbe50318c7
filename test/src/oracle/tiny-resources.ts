import type { AttendedWork, LaunchRule, MachineGroup, StationGroup } from '@buildweek/model';
import fc from 'fast-check';
import { onDays } from './small-lab.ts';
import { maybe, tinyHands, tinyRun, tinyWork } from './tiny-duration.ts';
import { tinyConditions, tinyFailure, tinyFirstLayers } from './tiny-trouble.ts';

const WORKDAYS = [0, 1, 2, 3, 4];

const launch: fc.Arbitrary<LaunchRule> = fc.record({
  fullShare: fc.constantFrom(null, 0, 0.5, 0.8, 1),
  waitedHours: fc.constantFrom(null, null, 0, 4, 24),
  beforeClosing: fc.boolean(),
  fixedHours: fc.constantFrom(
    null,
    null,
    null,
    onDays(WORKDAYS, ['15:00', '15:01']).map((span) => span.fromHour),
    [9, 58],
  ),
  promiseAtRisk: fc.constantFrom(false, false, false, true),
  preferAttendedEnd: fc.constantFrom(false, false, true),
});

const materialChanges: fc.Arbitrary<MachineGroup['materialChanges']> = fc.array(
  fc.record({
    from: fc.constantFrom(null, 'grey', 'clear'),
    to: fc.constantFrom(null, 'grey', 'clear'),
    duration: tinyHands,
    attended: fc.boolean(),
  }),
  { maxLength: 2 },
);

function machineGroup(name: string): fc.Arbitrary<MachineGroup> {
  return fc
    .record({
      name: fc.constant(name),
      process: fc.constant('other' as const),
      count: fc.integer({ min: 1, max: 2 }),
      capacity: fc.constantFrom(4, 2, 3, 6, 10),
      mostJobs: fc.constant(null),
      shaped: fc.constant(null),
      prepare: maybe(tinyWork),
      setUp: maybe(tinyWork),
      materialChanges,
      warmUp: maybe(tinyRun),
      firstLayers: fc.option(tinyFirstLayers, { nil: null, freq: 1 }),
      coolDown: maybe(
        fc.record({ duration: tinyRun, where: fc.constantFrom('machine' as const, 'outside' as const) }),
      ),
      unload: maybe(tinyWork),
      launch,
      carrier: fc.constantFrom(null, null, 'platforms'),
      initialMaterial: fc.constantFrom(null, 'grey', 'clear'),
      failure: tinyFailure,
      ...tinyConditions,
    })
    .map((group) => {
      // Last call and attended changes are said of the set-up: a group without one has neither. Who prepares
      // where somebody else sets up is not said to have a closing time of his own.
      if (group.setUp !== null) {
        const { prepare, setUp } = group;
        const bySame = (work: AttendedWork | null): AttendedWork | null =>
          work === null ? null : { ...work, skill: setUp.skill };
        return { ...group, prepare: bySame(prepare), firstLayers: bySame(group.firstLayers) };
      }
      return {
        ...group,
        launch: { ...group.launch, beforeClosing: false, preferAttendedEnd: false },
        materialChanges: group.materialChanges.map((change) => ({ ...change, attended: false })),
      };
    });
}

/** One to three machines in one or two groups. */
export const tinyMachines: fc.Arbitrary<MachineGroup[]> = fc
  .tuple(machineGroup('printers'), machineGroup('ovens'))
  .map(([one, other]) => [one, { ...other, count: 1 }]);

function stationGroup(name: string): fc.Arbitrary<StationGroup> {
  return fc.record({
    name: fc.constant(name),
    count: fc.integer({ min: 1, max: 2 }),
    capacity: fc.constantFrom(1, 2, 4, 8),
    unit: fc.constantFrom('jobs' as const, 'parts' as const, 'builds' as const),
    fullShare: fc.constantFrom(0, 0, 0.5, 1),
    waitedHours: fc.constantFrom(null, 1, 6),
    ...tinyConditions,
  });
}

export const tinyStations: fc.Arbitrary<StationGroup[]> = fc
  .tuple(stationGroup('washers'))
  .map((groups) => [...groups]);
