import type { Lab } from '@buildweek/model';
import type { PinnedAnswer } from '@buildweek/results';
import { effectsBetween } from './effects.ts';
import type { LabMoments } from './lab-moments.ts';
import { type PlayedJobs, playJobs } from './play-jobs.ts';
import { jobName, type PromisePlay } from './promise-question.ts';
import type { PlayedDay } from './typical-day.ts';

/**
 * What follows from builds that somebody has decided on, against the rules of the lab deciding alone, on the same random
 * numbers.
 *
 * @param lab with the decisions in its state
 * @param pinned its jobs, played
 * @param days its builds before the lab opens again, one for each play
 * @returns null when it was stopped
 */
export async function pinnedStudy(
  lab: Lab,
  pinned: PlayedJobs,
  days: readonly PlayedDay[],
  moments: LabMoments,
  play: PromisePlay,
): Promise<PinnedAnswer | null> {
  const { pinned: builds = [], ...state } = lab.initialState;
  const free: Lab = { ...lab, initialState: state };
  const without = await playJobs(free, state.jobs.length, null, play);
  if (without === null) return null;
  return {
    builds: builds.map(({ machine, jobs, fromHour }) => {
      const started = days.filter((day) =>
        day.builds.some(
          (build) =>
            build.machine === machine && jobs.every((job) => build.jobs.some((one) => one.job === job)),
        ),
      ).length;
      return {
        machine,
        jobs: jobs.map((job) => jobName(state.jobs, job)),
        from: moments.moment(moments.elapsed(fromHour)),
        share: days.length === 0 ? 0 : started / days.length,
      };
    }),
    ...effectsBetween(free, without, pinned, moments),
  };
}
