import { createLocalTime, type LocalTime } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { LoggedJob, LoggedJobs } from '@buildweek/records';
import type { LeftOut } from '@buildweek/results';
import type { JudgedWeeks } from './judged-weeks.ts';
import { MILLISECONDS_PER_DAY } from './log-times.ts';

/** A job of the log that is played. */
export interface PlayedJob {
  readonly logged: LoggedJob;
  /** Position in `Lab.demand`. */
  readonly stream: number;
  /** Name of its part type. */
  readonly part: string;
  /**
   * When it comes in the play, elapsed milliseconds since its start: jobs of one instant come a millisecond apart, so
   * that their order is known.
   */
  readonly enters: number;
  /** False where the log does not know its finish: it is played, but not judged. */
  readonly isJudged: boolean;
}

export interface PlayedJobs {
  /** In the order in which they come. */
  readonly jobs: readonly PlayedJob[];
  readonly leftOut: LeftOut[];
}

/** Rows that are named of each kind of job that is left out. */
const ROWS_NAMED = 12;
/** A job of which the log knows the day alone comes at noon. */
const NOON = MILLISECONDS_PER_DAY / 2;

/** Finds for each job of the log the demand that it belongs to, and says what cannot be played or judged. */
export function playedJobs(log: LoggedJobs, lab: Lab, { playedFrom, to }: JudgedWeeks): PlayedJobs {
  const streamOf = streamFinder(lab);
  const unknown: LoggedJob[] = [];
  const cancelled: LoggedJob[] = [];
  const later: LoggedJob[] = [];
  const found: Omit<PlayedJob, 'enters'>[] = [];
  for (const logged of log.jobs) {
    const stream = streamOf(logged.part);
    if (logged.asked >= to || logged.asked < playedFrom) later.push(logged);
    else if (logged.cancelled) cancelled.push(logged);
    else if (stream === undefined) unknown.push(logged);
    else {
      const part = lab.demand[stream]?.part ?? '';
      found.push({ logged, stream, part, isJudged: logged.finished !== null || logged.isOpen });
    }
  }
  const hidden = found.filter(({ isJudged }) => !isJudged).map(({ logged }) => logged);
  return {
    jobs: inOrder(found, playedFrom, createLocalTime(lab.clockChanges)),
    leftOut: [
      ...unknownParts(unknown, lab),
      ...leftOut(
        'cancelled',
        cancelled,
        'Cancelled jobs are not played: the log does not say what was done for them.',
      ),
      ...leftOut(
        'finish not known',
        hidden,
        'They are played, but not judged: the log does not say when they were finished.',
      ),
      ...leftOut('after the judged weeks', later, 'They came after the last whole week of the log.'),
    ],
  };
}

/** Names agree without regard to capitals and spaces; the name of a demand counts before that of its part. */
function streamFinder(lab: Lab): (name: string) => number | undefined {
  const byName = new Map<string, number>();
  const add = (name: string, stream: number): void => {
    if (!byName.has(plain(name))) byName.set(plain(name), stream);
  };
  lab.demand.forEach(({ name }, stream) => {
    add(name, stream);
  });
  lab.demand.forEach(({ part }, stream) => {
    add(part, stream);
  });
  return (name) => byName.get(plain(name));
}

function plain(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

function inOrder(
  found: readonly Omit<PlayedJob, 'enters'>[],
  playedFrom: number,
  localTime: LocalTime,
): PlayedJob[] {
  const jobs = found.map((job) => {
    const { asked, askedHasClock } = job.logged;
    return { ...job, enters: localTime.toElapsed(asked - playedFrom + (askedHasClock ? 0 : NOON)) };
  });
  jobs.sort((a, b) => a.enters - b.enters || a.logged.row - b.logged.row);
  let latest = Number.NEGATIVE_INFINITY;
  return jobs.map((job) => {
    latest = Math.max(job.enters, latest + 1);
    return { ...job, enters: latest };
  });
}

/** One entry for each name that the scenario does not know. */
function unknownParts(jobs: readonly LoggedJob[], lab: Lab): LeftOut[] {
  const known = lab.demand.map(({ name }) => `"${name}"`).join(', ');
  const names = [...new Set(jobs.map(({ part }) => part))];
  return names.flatMap((name) =>
    leftOut(
      'unknown part',
      jobs.filter(({ part }) => part === name),
      `The scenario has no demand for "${name}". Say in a mapping file which of its parts that is (${known}), as --mapping with "parts: { ${name}: ${lab.demand[0]?.name ?? ''} }", or add the part and its demand to the scenario.`,
    ),
  );
}

function leftOut(why: LeftOut['why'], jobs: readonly LoggedJob[], what: string): LeftOut[] {
  if (jobs.length === 0) return [];
  return [{ why, what, jobs: jobs.length, rows: jobs.slice(0, ROWS_NAMED).map(({ row }) => row) }];
}
