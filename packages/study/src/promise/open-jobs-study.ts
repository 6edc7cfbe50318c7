import type { Lab } from '@buildweek/model';
import type { OpenJob, PinnedAnswer, PromiseDay, PromiseSince } from '@buildweek/results';
import { buildsOf, downAtTheEnd } from './day-builds.ts';
import { dayPlan } from './day-plan.ts';
import { LabMoments } from './lab-moments.ts';
import { dayEndOf } from './lab-opening.ts';
import { lateReasons } from './late-reasons.ts';
import { pinnedStudy } from './pinned-study.ts';
import { endingsOf, playJobs } from './play-jobs.ts';
import { jobName, type PromisePlay } from './promise-question.ts';
import { chanceBy, meanOver, promisedDates } from './promised-dates.ts';
import { sinceStudy } from './since-study.ts';
import type { Before } from './since-yesterday.ts';
import type { PlayedDay } from './typical-day.ts';

/** The jobs that stand in the lab, and what to do before it closes. */
export interface OpenJobs {
  readonly openJobs: readonly OpenJob[];
  readonly day: PromiseDay | null;
  /** Null when it is held against no answer of the day before. */
  readonly since: PromiseSince | null;
  /** Null when nothing was decided beforehand. */
  readonly pinned: PinnedAnswer | null;
}

/**
 * Chance of being on time, dates and risks of every job in the lab, and what to start before it closes.
 *
 * @param lab with at least one job in its state
 * @param before the answer of the day before, to say what has moved; or null
 * @returns null when it was stopped
 */
export async function openJobsStudy(
  lab: Lab,
  play: PromisePlay,
  before: Before | null = null,
): Promise<OpenJobs | null> {
  const { jobs } = lab.initialState;
  const moments = new LabMoments(lab);
  const dayEnd = dayEndOf(lab, moments);
  const machines = new Set(
    lab.machines.flatMap(({ name, count }) =>
      Array.from({ length: count }, (_, index) => `${name} ${index + 1}`),
    ),
  );
  // What begins in the moment in which the lab opens belongs to the next day.
  const traceUntil = dayEnd === null ? null : dayEnd.opens - 1;
  const days: PlayedDay[] = [];
  const played = await playJobs(lab, jobs.length, null, play, { traceUntil }, ({ trace }) => {
    days.push({ builds: buildsOf(trace ?? [], machines), down: downAtTheEnd(trace ?? []) });
  });
  if (played === null) return null;
  const isDecided = (lab.initialState.pinned ?? []).length > 0;
  const pinned = isDecided ? await pinnedStudy(lab, played, days, moments, play) : null;
  if (isDecided && pinned === null) return null;
  const openJobs = jobs.map((job, position): OpenJob => {
    const endings = endingsOf(played, position);
    const due = job.dueAtHour === null ? null : moments.elapsed(job.dueAtHour);
    const mean = meanOver(endings);
    const stream = lab.demand.find(({ name }) => name === job.stream);
    return {
      job: jobName(jobs, position),
      demand: job.stream,
      part: stream?.part ?? job.stream,
      quantity: job.quantity,
      rush: job.rush,
      stage: job.stage,
      machine: lab.initialState.machines.find(({ jobs: held }) => held.includes(position))?.machine ?? null,
      arrived: moments.moment(moments.elapsed(job.arrivedAtHour)).at,
      due: due === null ? null : moments.moment(due),
      onTime: due === null ? null : chanceBy(endings, due),
      meanReady: mean.kind === 'estimate' ? moments.moment(mean.value) : null,
      dates: promisedDates(endings, moments, play.lastWeeks),
      risk: due === null ? [] : lateReasons(lab, position, due, played, moments),
      moved: [],
    };
  });
  const moved = before === null ? null : await sinceStudy(lab, openJobs, played, before, play);
  if (before !== null && moved === null) return null;
  return {
    openJobs: moved?.openJobs ?? openJobs,
    since: moved?.since ?? null,
    pinned,
    day: dayEnd === null ? null : dayPlan(lab, machines, days, dayEnd, moments),
  };
}
