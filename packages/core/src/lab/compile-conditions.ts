import type { BuildFailure, EquipmentConditions } from '@buildweek/model';
import { createSampler } from '../kernel/sampler.ts';
import type { AttendanceCompiler } from './compile-attendance.ts';
import type { CompiledConditions, CompiledFailure } from './compiled-lab.ts';

/** @param group name of the machine or station group, on which the hours of the people are booked */
export function compileConditions(
  conditions: EquipmentConditions,
  group: string,
  attendance: AttendanceCompiler,
): CompiledConditions {
  return {
    breakdowns: conditions.breakdowns.map((breakdown) => {
      const { repair } = breakdown;
      const isOwn = repair.kind === 'own';
      return {
        name: breakdown.name,
        byRunningHours: breakdown.by === 'running hours',
        between: createSampler(breakdown.between),
        losesBuild: breakdown.effect === 'loses the build',
        ownRepair: isOwn ? attendance.work({ ...repair.work, pausable: true }, `${group}: repair`) : null,
        response: isOwn ? null : createSampler(repair.response),
        visit: isOwn ? null : createSampler(repair.visit),
        serviceCalendar: isOwn ? null : repair.calendar,
      };
    }),
    chores: conditions.chores.map((chore) => ({
      name: chore.name,
      kind: chore.kind,
      byRunningHours: chore.by === 'running hours',
      every: createSampler(chore.every),
      work: chore.work === null ? null : attendance.work(chore.work, `${group}: ${chore.name}`),
      duration: chore.duration === null ? null : createSampler(chore.duration.distribution),
    })),
    noticing: conditions.noticing,
    calendar: conditions.calendar,
    unattendedHours: conditions.unattendedHours,
  };
}

export function compileFailure(
  failure: BuildFailure | null,
  group: string,
  attendance: AttendanceCompiler,
): CompiledFailure | null {
  if (failure === null) return null;
  return {
    chancePerBuild: failure.chancePerBuild,
    perPrintHour: failure.perPrintHour,
    losesBuild: failure.loses === 'the build',
    cleaning: failure.cleaning === null ? null : attendance.work(failure.cleaning, `${group}: cleaning`),
  };
}
