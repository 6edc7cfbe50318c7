import { meanOf } from '@buildweek/core';
import type { AttendedWork, Lab } from '@buildweek/model';
import type { ExpectedBatches } from './expected-batches.ts';
import { type ExpectedBuilds, partOf } from './expected-builds.ts';
import type { ExpectedDemand } from './expected-demand.ts';

/** Hours of people that the demand asks for in a week, by skill. */
export function expectedPeopleWork(
  lab: Lab,
  demands: readonly ExpectedDemand[],
  builds: readonly ExpectedBuilds[],
  batches: readonly ExpectedBatches[],
): Map<string, number> {
  const hours = new Map<string, number>();
  const add = (skill: string, more: number): void => {
    hours.set(skill, (hours.get(skill) ?? 0) + more);
  };
  const addWork = (work: AttendedWork | null, times: number): void => {
    if (work !== null) add(work.skill, times * work.persons * meanOf(work.duration.distribution));
  };
  for (const demand of demands) {
    const buildsPerWeek = builds.find((candidate) => candidate.demand === demand)?.buildsPerWeek ?? 0;
    for (const stage of partOf(lab, demand).stages) {
      if (stage.kind !== 'work') continue;
      const times = { job: demand.jobsPerWeek, part: demand.piecesPerWeek, build: buildsPerWeek }[
        stage.basis
      ];
      addWork(stage.work, times);
    }
  }
  for (const { group, buildsPerWeek } of builds) {
    addWork(group.prepare, buildsPerWeek);
    addWork(group.setUp, buildsPerWeek);
    addWork(group.unload, buildsPerWeek);
  }
  for (const { stage, batchesPerWeek, runHours } of batches) {
    addWork(stage.load, batchesPerWeek);
    addWork(stage.unload, batchesPerWeek);
    const { runAttendance } = stage;
    if (runAttendance !== null) add(runAttendance.skill, batchesPerWeek * runAttendance.persons * runHours);
  }
  return hours;
}
