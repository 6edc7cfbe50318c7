export {
  type ColumnPlace,
  JOB_COLUMNS,
  type JobColumn,
  RUN_COLUMNS,
  type RunColumn,
  type StagePlaces,
} from './columns/columns.ts';
export { type JobPlan, jobPlan } from './columns/job-plan.ts';
export { type RunPlan, runPlan } from './columns/run-plan.ts';
export { type TableHead, tableHead } from './columns/table-head.ts';
export { OrderEvidence } from './dates/order-evidence.ts';
export { checkOffsets, decidedOrder, TableDates } from './dates/table-dates.ts';
export type { DateOrder } from './dates/written-date.ts';
export { type MachineFacts, machineFacts } from './facts/machine-groups.ts';
export { type PartFacts, partFacts } from './facts/part-facts.ts';
export { type WorkingHours, workingHours } from './facts/working-hours.ts';
export { countedWords } from './first-scenario/counted-words.ts';
export { demandOf } from './first-scenario/demand-lines.ts';
export { type FirstScenarioFacts, firstScenario } from './first-scenario/first-scenario.ts';
export type { LearnedWords, Sourced, SourcedChoice } from './first-scenario/learned-words.ts';
export { type ArrivalFacts, arrivalFacts } from './learn/arrival-facts.ts';
export { learnedFigures } from './learn/learned-figures.ts';
export { spanText, type WeekBlock, type WeekSpan } from './learn/week-blocks.ts';
export { logUntil, runsUntil } from './log-until.ts';
export type { CivilTime, LoggedJob, LoggedJobs, LoggedStage, MachineRun } from './logged-jobs.ts';
export type { MachineMapping, MappedStage, Mapping } from './mapping/mapping.ts';
export { type CountedRows, ROWS_KEPT, type RowCounts, type RowTrouble } from './row-counts.ts';
export { JobRows, type ReadJobs } from './rows/job-rows.ts';
export type { PartNames } from './rows/part-names.ts';
export { type ReadRuns, RunRows } from './rows/run-rows.ts';
export { TableProblem } from './table-problem.ts';
export type { TableRow } from './table-row.ts';
export { type Encoding, fromWindows1252, guessEncoding, notText } from './text/encoding.ts';
export { guessSeparator, isSeparator, type Separator } from './text/separator.ts';
export { type BusyMachine, type LabState, type OpenJob, openJobs } from './today/open-jobs.ts';
