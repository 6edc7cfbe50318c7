import { meanOf } from '@buildweek/core';
import type { AttendedWork, Lab } from '@buildweek/model';
import type { ExpectedBatches } from './expected-batches.ts';
import { type ExpectedBuilds, partOf } from './expected-builds.ts';
import type { ExpectedDemand } from './expected-demand.ts';
import { expectedVisits } from './expected-visits.ts';

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
    const part = partOf(lab, demand);
    const visits = expectedVisits(part);
    for (const [position, stage] of part.stages.entries()) {
      if (stage.kind !== 'work') continue;
      // Pieces that go round again are sure to need the work per piece again; that per job is counted once.
      const pieces = demand.piecesPerWeek * (visits[position] ?? 1);
      addWork(stage.work, { job: demand.jobsPerWeek, part: pieces, build: buildsPerWeek }[stage.basis]);
    }
  }
  for (const { group, buildsPerWeek } of builds) {
    addWork(group.prepare, buildsPerWeek);
    addWork(group.setUp, buildsPerWeek);
    addWork(group.firstLayers, buildsPerWeek);
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
