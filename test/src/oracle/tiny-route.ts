import type { PrintTime, Stage } from '@buildweek/model';
import fc from 'fast-check';
import { STAGE } from './small-lab.ts';
import { maybe, SKILLS, tinyRun, tinyWork } from './tiny-duration.ts';

/** Routes that share some of their stages, so that parts of several types meet in builds and batches. */

const flags = {
  level: fc.constant('job' as const),
  move: fc.constantFrom('per job' as const, 'per build' as const),
  emptiesCarrier: fc.constantFrom(false, false, true),
  maximumWaitHours: fc.constant(null),
  rejects: fc.constant(null),
};

const workStage = (name: string): fc.Arbitrary<Stage> =>
  fc.record({
    kind: fc.constant('work' as const),
    name: fc.constant(name),
    work: tinyWork,
    basis: fc.constantFrom('job' as const, 'part' as const, 'build' as const),
    ...flags,
  });

const stationStage = (name: string): fc.Arbitrary<Stage> =>
  fc.record({
    kind: fc.constant('station' as const),
    name: fc.constant(name),
    stationGroup: fc.constant('washers'),
    load: maybe(tinyWork),
    run: tinyRun,
    runAttendance: fc.oneof(
      fc.constant(null),
      fc.record({
        skill: fc.constantFrom(...SKILLS),
        persons: fc.constantFrom(1, 1, 2),
        pausable: fc.boolean(),
      }),
    ),
    basis: fc.constantFrom('batch' as const, 'job' as const, 'part' as const, 'build' as const),
    unload: maybe(tinyWork),
    ...flags,
  });

const waitStage = (name: string): fc.Arbitrary<Stage> =>
  fc.record({
    kind: fc.constant('wait' as const),
    name: fc.constant(name),
    duration: tinyRun,
    requesterChance: fc.constant(null),
    ...flags,
  });

const sharedStages = fc.tuple(
  workStage('hand work'),
  stationStage('wash'),
  waitStage('dry'),
  stationStage('cure'),
  workStage('inspect'),
);

const print: fc.Arbitrary<PrintTime> = fc.record({
  kind: fc.constant('typed' as const),
  perBuild: tinyRun,
  perPart: fc.oneof(
    tinyRun,
    fc.constant({ distribution: { kind: 'constant' as const, value: 0 }, typicalHours: 0 }),
  ),
});

/** Positions of shared stages before the build, for the whole build, and behind it. */
const plan = fc.record({
  print: fc.option(print, { nil: null, freq: 8 }),
  machineGroup: fc.constantFrom('printers', 'printers', 'printers', 'ovens'),
  move: flags.move,
  emptiesCarrier: flags.emptiesCarrier,
  stages: fc.shuffledSubarray([0, 1, 2, 3, 4], { minLength: 0, maxLength: 4 }),
  before: fc.constantFrom(0, 0, 1, 2),
  together: fc.constantFrom(0, 0, 1, 2),
});

export interface TinyRoute {
  readonly stages: readonly Stage[];
  readonly print: PrintTime | null;
}

/** Only whole builds have a time for each build, and stand on a carrier that can be emptied. */
function forJobs(stage: Stage | undefined): Stage[] {
  if (stage === undefined) return [];
  const single = { ...stage, emptiesCarrier: false };
  return single.kind === 'work' || single.kind === 'station'
    ? [{ ...single, basis: single.basis === 'build' ? 'job' : single.basis } as Stage]
    : [single];
}

/** One to three routes. */
export const tinyRoutes: fc.Arbitrary<TinyRoute[]> = fc
  .tuple(sharedStages, fc.array(plan, { minLength: 1, maxLength: 3 }), fc.boolean())
  .map(([shared, plans, alike]) =>
    plans.map(({ print: printTime, machineGroup, move, emptiesCarrier, ...own }) => {
      // Half of the labs give all parts the stages of the first, so that whole builds are shared too.
      const like = alike ? (plans[0] ?? own) : own;
      const pick = (from: number, to: number): Stage[] =>
        like.stages.slice(from, to).flatMap((position) => forJobs(shared[position]));
      const before = pick(0, like.before);
      if (printTime === null) {
        const stages = [...before, ...pick(like.before, 5)];
        return { stages: stages.length > 0 ? stages : forJobs(shared[0]), print: null };
      }
      const built: Stage = {
        ...STAGE,
        kind: 'build',
        name: 'build',
        machineGroup,
        move,
        level: 'build',
        emptiesCarrier,
      };
      const together = like.stages.slice(like.before, like.before + like.together).flatMap((position) => {
        const stage = shared[position];
        return stage === undefined ? [] : [{ ...stage, level: 'build' as const }];
      });
      const behind = pick(like.before + like.together, 5);
      return { stages: [...before, built, ...together, ...behind], print: printTime };
    }),
  );
