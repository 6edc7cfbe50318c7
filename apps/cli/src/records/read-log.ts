import {
  type DateOrder,
  type JobPlan,
  JobRows,
  jobPlan,
  type LoggedJobs,
  type MachineRun,
  type Mapping,
  type ReadJobs,
  type ReadRuns,
  type RunPlan,
  RunRows,
  runPlan,
  TableProblem,
} from '@buildweek/records';
import { badInput } from '../failure.ts';
import type { TextStream } from '../terminal/style.ts';
import { mappingOf } from './mapping-file.ts';
import { readDates, readHead } from './read-head.ts';
import { ReadingBar } from './reading-bar.ts';
import { openTable, type TableFile } from './table-file.ts';

/** Milliseconds: runs of machines so much later than the last request still belong to the period of the log. */
const LATEST_RUN = 7 * 86_400_000;

export interface ReadLogOptions {
  /** Mapping file. */
  readonly mapping?: string | undefined;
  /** Zone of the lab, where the mapping says none. */
  readonly zone?: string | null | undefined;
  /** Record of machines. */
  readonly machines?: string | undefined;
  /** Names of parts that a scenario has: spellings of them are taken for them. */
  readonly knownParts?: readonly string[];
  readonly keepsRequesters?: boolean;
  /** Where progress is shown. */
  readonly progress?: TextStream;
}

/** A log with all that was understood of it. */
export interface ReadLog extends LoggedJobs {
  readonly runs: readonly MachineRun[];
  readonly requests: {
    readonly table: TableFile;
    readonly plan: JobPlan;
    readonly read: ReadJobs;
    readonly order: DateOrder | null;
  };
  readonly machines: {
    readonly table: TableFile;
    readonly plan: RunPlan;
    readonly read: ReadRuns;
    readonly order: DateOrder | null;
  } | null;
  readonly mapping: Mapping;
  readonly zone: string | null;
}

/**
 * Reads the list of requests of a lab, and the record of its machines where there is one.
 * @param path of a table (CSV)
 * @throws Failure for bad input with file, row, what is wrong and how to mend it
 */
export async function readLog(path: string, options: ReadLogOptions = {}): Promise<ReadLog> {
  const mapping = options.mapping === undefined ? {} : mappingOf(options.mapping);
  const zone = mapping.zone ?? options.zone ?? null;
  const bar = new ReadingBar(options.progress ?? process.stderr);
  try {
    const requests = await inTable(path, () => readRequests(path, mapping, zone, options, bar));
    const { machines: runsPath } = options;
    const machines =
      runsPath === undefined
        ? null
        : await inTable(runsPath, () => readMachines(runsPath, mapping, zone, bar));
    const { from, until, jobs, counted } = requests.read;
    const runs = machines?.read.runs ?? [];
    // Machines may have run on for some days; a record that is longer, or a slip of a year, adds no weeks without jobs.
    const lastRun = runs
      .map(({ start, end }) => end ?? start)
      .filter((time) => time <= until + LATEST_RUN)
      .reduce((latest, time) => Math.max(latest, time), until);
    return { from, until: lastRun, jobs, counted, runs, requests, machines, mapping, zone };
  } finally {
    bar.clear();
  }
}

async function readRequests(
  path: string,
  mapping: Mapping,
  zone: string | null,
  { knownParts = [], keepsRequesters = false }: ReadLogOptions,
  bar: ReadingBar,
): Promise<ReadLog['requests']> {
  const table = await openTable(path, 'log', mapping.separator);
  const { head, isWhole } = await readHead(table, 'jobs');
  const plan = jobPlan(head, mapping);
  const dates = await readDates(table, head, isWhole, plan.datePositions, {
    order: mapping.dates,
    zone,
    key: 'dates',
  });
  const rows = new JobRows(plan, { mapping, dates, knownParts, keepsRequesters });
  await bar.during(table, (onBytes) =>
    table.eachRow((row) => {
      if (row.line > plan.headerLine) rows.take(row);
      return true;
    }, onBytes),
  );
  return { table, plan, read: rows.finish(), order: dates.order };
}

async function readMachines(
  path: string,
  mapping: Mapping,
  zone: string | null,
  bar: ReadingBar,
): Promise<NonNullable<ReadLog['machines']>> {
  const own = mapping.machines ?? {};
  const table = await openTable(path, 'record of machines', own.separator);
  const { head, isWhole } = await readHead(table, 'runs');
  const plan = runPlan(head, own);
  const dates = await readDates(table, head, isWhole, plan.datePositions, {
    order: own.dates,
    zone,
    key: 'dates',
  });
  const rows = new RunRows(plan, dates, own);
  await bar.during(table, (onBytes) =>
    table.eachRow((row) => {
      if (row.line > plan.headerLine) rows.take(row);
      return true;
    }, onBytes),
  );
  return { table, plan, read: rows.finish(), order: dates.order };
}

/** Says in which file it is when something is wrong with a table. */
async function inTable<Answer>(path: string, read: () => Promise<Answer>): Promise<Answer> {
  try {
    return await read();
  } catch (error) {
    if (!(error instanceof TableProblem)) throw error;
    const place = error.row === null ? path : `${path}:${error.row}`;
    const lines = [`${place}: error: ${error.message}`];
    if (error.found !== '') lines.push(`  found:    ${error.found}`);
    lines.push(`  expected: ${error.expected}`, `  write:    ${error.write}`);
    throw badInput([...lines, '', `There is an error in ${path}; nothing was done.`].join('\n'));
  }
}
