import type { CivilTime, LoggedJob, LoggedJobs, MachineRun } from './logged-jobs.ts';

/**
 * A log as it stood at an earlier moment: what was asked for by then, open where it was not finished. What is known of
 * rows stays that of the whole log.
 *
 * @param until no later than the end of the log
 */
export function logUntil(log: LoggedJobs, until: CivilTime): LoggedJobs {
  return {
    ...log,
    until: Math.min(log.until, until),
    jobs: log.jobs.filter(({ asked }) => asked < until).map((job) => jobUntil(job, until)),
  };
}

/** The runs that had begun by then; those that had not ended were running. */
export function runsUntil(runs: readonly MachineRun[], until: CivilTime): MachineRun[] {
  return runs
    .filter(({ start }) => start < until)
    .map((run) => (run.end !== null && run.end > until ? { ...run, end: null, outcome: 'running' } : run));
}

function jobUntil(job: LoggedJob, until: CivilTime): LoggedJob {
  const known = (time: CivilTime | null): CivilTime | null => (time === null || time > until ? null : time);
  const isOpen = job.isOpen || (job.finished !== null && job.finished > until);
  return {
    ...job,
    finished: known(job.finished),
    isOpen,
    stages: job.stages.map((stage) => ({ ...stage, start: known(stage.start), end: known(stage.end) })),
  };
}
