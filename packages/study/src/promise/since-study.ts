import type { Lab } from '@buildweek/model';
import {
  type EstimateOrRefused,
  momentText,
  type OpenJob,
  type PromiseSince,
  writtenText,
} from '@buildweek/results';
import { hoursLater } from './effects.ts';
import { endingsOf, type PlayedJobs, playJobs } from './play-jobs.ts';
import type { PromisePlay } from './promise-question.ts';
import { meanOver } from './promised-dates.ts';
import { type Before, differencesSince, sameJobs } from './since-yesterday.ts';

const HOUR = 3_600_000;
/** Chance of the dates that are compared. */
const TOLD = 0.8;
/** A date that has moved by less is where it was. */
const LEAST_HOURS = 1;
const HOURS = { size: 1, leastDecimals: 1, isMoney: false, one: '', many: '' };

/**
 * By how much the dates of jobs have moved since the day before, and why: the state of today is played with one
 * difference at a time put back, on the same random numbers. What no difference explains is how things went: the day
 * before knew only what was likely.
 *
 * @param played the jobs of today
 * @returns the jobs with what moved them; null when it was stopped
 */
export async function sinceStudy(
  lab: Lab,
  openJobs: readonly OpenJob[],
  played: PlayedJobs,
  before: Before,
  play: PromisePlay,
): Promise<{ readonly openJobs: readonly OpenJob[]; readonly since: PromiseSince } | null> {
  const same = sameJobs(openJobs, before.openJobs);
  const reasons: string[][] = openJobs.map(() => []);
  for (const difference of differencesSince(lab, openJobs, same, before)) {
    const { positions, only } = difference;
    const count = difference.lab.initialState.jobs.length;
    const without = count === 0 ? { jobs: [] } : await playJobs(difference.lab, count, null, play);
    if (without === null) return null;
    openJobs.forEach((_, index) => {
      const position = positions[index] ?? -1;
      if (position < 0 || same[index] === null || (only !== null && only !== index)) return;
      const now = endingsOf(played, index);
      const then = endingsOf(without, position);
      const hours = meanOver(now.map((ended, replication) => hoursLater(ended, then[replication] ?? 0)));
      const words = effectWords(hours);
      if (words !== null) reasons[index]?.push(`${difference.what}, which makes it ${words}`);
    });
  }
  return {
    openJobs: openJobs.map((job, index) => ({
      ...job,
      moved: movedWords(job, same[index] ?? null, before.now, reasons[index] ?? []),
    })),
    since: {
      now: before.now,
      come: openJobs.flatMap((job, index) => (same[index] === null ? [job.job] : [])),
      gone: before.openJobs.filter((job) => !same.includes(job)).map(({ job }) => job),
    },
  };
}

/** Nothing when no difference can be told. */
function effectWords(hours: EstimateOrRefused): string | null {
  if (hours.kind !== 'estimate' || (hours.low <= 0 && hours.high >= 0)) return null;
  if (hours.value > 0) return `${writtenText(hours, HOURS)} h later`;
  const turned = { ...hours, value: -hours.value, low: -hours.high, high: -hours.low };
  return `${writtenText(turned, HOURS)} h earlier`;
}

function movedWords(
  job: OpenJob,
  earlier: OpenJob | null,
  before: string,
  reasons: readonly string[],
): string[] {
  if (earlier === null) return [];
  const now = readyOf(job);
  const then = readyOf(earlier);
  if (now === null || then === null) return [];
  const moved = (timeOf(now) - timeOf(then)) / HOUR;
  if (Math.abs(moved) < LEAST_HOURS) return [];
  const hours = Math.abs(moved).toFixed(1);
  const why =
    reasons.length === 0
      ? `nothing that is known has changed: it has gone ${moved > 0 ? 'slower' : 'faster'} than was likely`
      : `${reasons.join('; ')}; the rest is how the work went`;
  return [
    `Its 80 % date is ${hours} h ${moved > 0 ? 'later' : 'earlier'} than by the answer of ${momentText(before)} (${momentText(now)}, and was ${momentText(then)}): ${why}.`,
  ];
}

function readyOf({ dates }: OpenJob): string | null {
  return dates.find(({ probability }) => probability === TOLD)?.ready?.at ?? null;
}

function timeOf(at: string): number {
  return Date.parse(`${at.replace(' ', 'T')}Z`);
}

/** What has changed since the day before, in a sentence or two. */
export function sinceVerdict(openJobs: readonly OpenJob[], { now, come, gone }: PromiseSince): string[] {
  const moved = openJobs.filter((job) => job.moved.length > 0);
  const count = (jobs: number): string => (jobs === 1 ? 'one job' : `${jobs} jobs`);
  const dates =
    moved.length === 0
      ? 'no date has moved by an hour or more'
      : `the ${moved.length === 1 ? 'date' : 'dates'} of ${count(moved.length)} ${moved.length === 1 ? 'has' : 'have'} moved by an hour or more`;
  return [`Since ${momentText(now)} ${count(come.length)} came and ${count(gone.length)} left; ${dates}.`];
}
