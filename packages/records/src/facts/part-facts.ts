import type { LoggedJob, MachineRun } from '../logged-jobs.ts';
import { countsOf, mostOf } from './counted-words.ts';
import { jobsByName, jobsOfRun } from './machine-groups.ts';
import { workingDaysBetween } from './working-hours.ts';

/** What a log tells of one part type, beside how often it is asked for. */
export interface PartFacts {
  readonly name: string;
  readonly jobs: number;
  readonly process: string | null;
  readonly material: string | null;
  /** Pieces of each job that says so, ascending. */
  readonly quantities: readonly number[];
  /** Jobs that say whether they are rush, and those that are. */
  readonly rush: { readonly told: number; readonly rush: number };
  /** What is promised most often, working days; null where nothing is. */
  readonly promise: PromiseFacts | null;
  readonly rushPromise: PromiseFacts | null;
  readonly cancelled: number;
  /** Most pieces that were in one run together; null where no run tells. */
  readonly mostInBuild: { readonly pieces: number; readonly runs: number } | null;
}

export interface PromiseFacts {
  readonly workingDays: number;
  /** Jobs with a promise, and those with just this one. */
  readonly promised: number;
  readonly alike: number;
}

/**
 * What a log tells of each part type, the most frequent first.
 * @param workingDays days of the week that are worked, from 0 for Monday
 */
export function partFacts(
  jobs: readonly LoggedJob[],
  runs: readonly MachineRun[],
  workingDays: readonly number[],
): PartFacts[] {
  const byPart = new Map<string, LoggedJob[]>();
  for (const job of jobs) {
    const own = byPart.get(job.part);
    if (own === undefined) byPart.set(job.part, [job]);
    else own.push(job);
  }
  const builds = buildSizes(jobs, runs);
  return [...byPart]
    .map(([name, own]): PartFacts => {
      const told = own.filter(({ rush }) => rush !== null);
      return {
        name,
        jobs: own.length,
        process: mostOf(countsOf(own.map(({ process }) => process))),
        material: mostOf(countsOf(own.map(({ material }) => material))),
        quantities: own
          .map(({ quantity }) => quantity)
          .filter((quantity) => quantity !== null)
          .sort((a, b) => a - b),
        rush: { told: told.length, rush: told.filter(({ rush }) => rush === true).length },
        promise: promiseOf(
          own.filter(({ rush }) => rush !== true),
          workingDays,
        ),
        rushPromise: promiseOf(
          own.filter(({ rush }) => rush === true),
          workingDays,
        ),
        cancelled: own.filter(({ cancelled }) => cancelled).length,
        mostInBuild: builds.get(name) ?? null,
      };
    })
    .sort((a, b) => b.jobs - a.jobs);
}

/** The number of working days that is promised most often. */
function promiseOf(jobs: readonly LoggedJob[], workingDays: readonly number[]): PromiseFacts | null {
  const days = jobs
    .filter(({ promised, asked }) => promised !== null && promised >= asked)
    .map(({ asked, promised }) => String(workingDaysBetween(asked, promised ?? asked, workingDays)));
  const counts = countsOf(days);
  const most = mostOf(counts);
  if (most === null) return null;
  return { workingDays: Number(most), promised: days.length, alike: counts.get(most) ?? 0 };
}

/**
 * Most pieces of a part that were in a run together: of runs that hold nothing else, and jobs that are in no other, so
 * that all of their pieces were in it.
 */
function buildSizes(
  jobs: readonly LoggedJob[],
  runs: readonly MachineRun[],
): Map<string, { pieces: number; runs: number }> {
  const byName = jobsByName(jobs);
  const runsOf = new Map<LoggedJob, number>();
  const contents = runs.map((run) => ({ run, own: jobsOfRun(run.job, byName) }));
  for (const { own } of contents) for (const job of own) runsOf.set(job, (runsOf.get(job) ?? 0) + 1);
  const sizes = new Map<string, { pieces: number; runs: number }>();
  for (const { run, own } of contents) {
    const [first] = own;
    if (first === undefined || run.outcome !== 'done') continue;
    const isWhole = own.every(
      (job) => job.part === first.part && runsOf.get(job) === 1 && job.quantity !== null,
    );
    if (!isWhole) continue;
    const pieces = own.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
    const before = sizes.get(first.part) ?? { pieces: 0, runs: 0 };
    sizes.set(first.part, { pieces: Math.max(before.pieces, pieces), runs: before.runs + 1 });
  }
  return sizes;
}
