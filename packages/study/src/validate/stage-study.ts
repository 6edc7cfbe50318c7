import { createLocalTime } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import { studentQuantile } from '@buildweek/numbers';
import type { HeldStage } from '@buildweek/results';
import type { ReplicationExecutor, StopSignal } from '../executor.ts';
import type { JudgedWeeks } from './judged-weeks.ts';
import { MILLISECONDS_PER_WEEK } from './log-times.ts';
import type { KnownStage } from './logged-stages.ts';
import type { PlayedJob } from './played-jobs.ts';
import { civilReader, loggedMoments, tracedMoments } from './stage-moments.ts';
import { type JobMoments, stageTimes } from './stage-times.ts';

/** Replications with the trace on: the average of another one lies among those of 19 of 21, nine of ten, on average. */
const TRACED_REPLICATIONS = 20;
/** How often any of the averages may stand out by chance; Bonferroni's correction over their number. */
const CHANCE = 0.05;

/**
 * Holds the times at and between the stages of which the log knows them against the model, for the judged jobs that
 * were finished.
 *
 * @param lab with the jobs of the log as its demand
 * @param stages of each part type, of which the log knows times
 * @returns null when somebody stopped; nothing where the log knows no times of stages
 */
export async function stageStudy(
  lab: Lab,
  jobs: readonly PlayedJob[],
  stages: ReadonlyMap<string, readonly KnownStage[]>,
  { playedFrom, from, to }: JudgedWeeks,
  seed: string,
  executor: ReplicationExecutor,
  stop: StopSignal | null,
): Promise<HeldStage[] | null> {
  const stagesOf = (job: number): readonly KnownStage[] => stages.get(jobs[job]?.part ?? '') ?? [];
  const judged = [...jobs.keys()].filter((job) => {
    const { asked, finished } = jobs[job]?.logged ?? { asked: 0, finished: null };
    return asked >= from && finished !== null && finished < to && stagesOf(job).length > 0;
  });
  if (judged.length === 0) return [];
  const civil = civilReader(createLocalTime(lab.clockChanges), playedFrom);
  const settings = Array.from({ length: TRACED_REPLICATIONS }, (_, replication) => ({
    seed,
    replication,
    ignoredWeeks: 0,
    weeks: (to - playedFrom) / MILLISECONDS_PER_WEEK,
    capWeeks: 0,
    trace: true,
    queueWaits: false,
    followJobs: jobs.length,
  }));
  const traced: JobMoments[][] = [];
  for await (const { replication, trace, followed } of executor.run(lab, settings, stop)) {
    const moments = tracedMoments(trace ?? [], jobs.length, stagesOf, civil);
    traced[replication] = judged.map((job) => {
      const endedAt = followed?.[job]?.endedAt ?? Number.POSITIVE_INFINITY;
      return {
        ...headOf(jobs, job),
        stages: moments[job] ?? [],
        end: Number.isFinite(endedAt) ? civil(endedAt) : null,
      };
    });
  }
  if (Object.keys(traced).length < TRACED_REPLICATIONS) return null;
  const logged = judged.map((job): JobMoments => {
    const one = jobs[job]?.logged;
    return {
      ...headOf(jobs, job),
      stages: one === undefined ? [] : loggedMoments(one, stagesOf(job)),
      end: one?.finishedHasClock === true ? one.finished : null,
    };
  });
  const found = lab.parts.flatMap(({ name, stages: route }) => {
    const known = stages.get(name) ?? [];
    if (known.length === 0) return [];
    const own = [...judged.keys()].filter((position) => logged[position]?.part === name);
    const pick = (all: readonly JobMoments[]): JobMoments[] => own.flatMap((position) => all[position] ?? []);
    return stageTimes(name, known, route.at(-1)?.name ?? '', pick(logged), traced.map(pick));
  });
  const works = found.filter(({ what }) => what === 'work').length;
  // Averages of work are as good as normal; waits of jobs that stand in one queue are not.
  return found.map(({ distance, ...one }) => ({
    ...one,
    standsOut: one.what === 'work' && Math.abs(distance) > farthest(works),
  }));
}

/** How far the farthest of so many averages is from the replications by chance, in standard deviations. */
function farthest(averages: number): number {
  return studentQuantile(1 - CHANCE / (2 * Math.max(1, averages)), TRACED_REPLICATIONS - 1);
}

function headOf(jobs: readonly PlayedJob[], job: number): Pick<JobMoments, 'part' | 'asked'> {
  const one = jobs[job];
  return { part: one?.part ?? '', asked: one?.logged.asked ?? Number.NaN };
}
