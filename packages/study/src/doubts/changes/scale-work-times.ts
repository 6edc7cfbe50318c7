import type {
  AttendedWork,
  Breakdown,
  Chore,
  EquipmentConditions,
  Lab,
  MachineGroup,
  Stage,
} from '@buildweek/model';
import { scaleDuration, scaleWork } from './scale-distribution.ts';

/**
 * All work of people takes so many times as long, or that which asks for a skill: stages, set-ups with attended
 * changes of material, loading and unloading, preparation, cleaning, upkeep, repairs. What machines and stations do by
 * themselves stays as it is; so do the watched first layers, which are a part of the print.
 *
 * @param skill null: all
 * @param factor above 0
 */
export function scaleAttendedWork(lab: Lab, skill: string | null, factor: number): Lab {
  const isMeant = (asked: string): boolean => skill === null || skill === asked;
  const work = (one: AttendedWork): AttendedWork => (isMeant(one.skill) ? scaleWork(one, factor) : one);
  const orNone = (one: AttendedWork | null): AttendedWork | null => (one === null ? null : work(one));
  return {
    ...lab,
    machines: lab.machines.map((machine) => ({
      ...machine,
      ...conditions(machine, work),
      prepare: orNone(machine.prepare),
      setUp: orNone(machine.setUp),
      unload: orNone(machine.unload),
      materialChanges: isMeant(machine.setUp?.skill ?? '')
        ? attendedChanges(machine, factor)
        : machine.materialChanges,
      failure: machine.failure && { ...machine.failure, cleaning: orNone(machine.failure.cleaning) },
    })),
    stations: lab.stations.map((station) => ({ ...station, ...conditions(station, work) })),
    parts: lab.parts.map((part) => ({
      ...part,
      stages: part.stages.map((stage): Stage => {
        if (stage.kind === 'work') return { ...stage, work: work(stage.work) };
        if (stage.kind !== 'station') return stage;
        const stays = stage.runAttendance !== null && isMeant(stage.runAttendance.skill);
        return {
          ...stage,
          load: orNone(stage.load),
          run: stays ? scaleDuration(stage.run, factor) : stage.run,
          unload: orNone(stage.unload),
        };
      }),
    })),
  };
}

/**
 * A stage takes so many times as long, for all part types that have it: its work, its wait, or the whole of what is
 * done at its station.
 *
 * @param factor above 0
 */
export function scaleStage(lab: Lab, name: string, factor: number): Lab {
  const orNone = (one: AttendedWork | null): AttendedWork | null =>
    one === null ? null : scaleWork(one, factor);
  const scaled = (stage: Stage): Stage => {
    switch (stage.kind) {
      case 'work':
        return { ...stage, work: scaleWork(stage.work, factor) };
      case 'wait':
        return { ...stage, duration: scaleDuration(stage.duration, factor) };
      case 'station':
        return {
          ...stage,
          load: orNone(stage.load),
          run: scaleDuration(stage.run, factor),
          unload: orNone(stage.unload),
        };
      case 'build':
        return stage;
    }
  };
  return {
    ...lab,
    parts: lab.parts.map((part) => ({
      ...part,
      stages: part.stages.map((stage) => (stage.name === name ? scaled(stage) : stage)),
    })),
  };
}

function conditions(
  { breakdowns, chores }: EquipmentConditions,
  work: (one: AttendedWork) => AttendedWork,
): Pick<EquipmentConditions, 'breakdowns' | 'chores'> {
  return {
    breakdowns: breakdowns.map((breakdown): Breakdown => {
      const { repair } = breakdown;
      return repair.kind === 'own'
        ? { ...breakdown, repair: { ...repair, work: work(repair.work) } }
        : breakdown;
    }),
    chores: chores.map(
      (chore): Chore => (chore.work === null ? chore : { ...chore, work: work(chore.work) }),
    ),
  };
}

/** Attended changes lengthen the set-up; the others run by themselves. */
function attendedChanges({ materialChanges }: MachineGroup, factor: number): MachineGroup['materialChanges'] {
  return materialChanges.map((change) =>
    change.attended ? { ...change, duration: scaleDuration(change.duration, factor) } : change,
  );
}
