export type { CivilTime, LoggedJob, LoggedJobs, LoggedStage, MachineRun } from './logged-jobs.ts';
export { type CountedRows, ROWS_KEPT, type RowCounts, type RowTrouble } from './row-counts.ts';
