import { createLocalTime, type History } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { CivilTime } from '@buildweek/records';
import type { ReplicationExecutor, StopSignal } from '../executor.ts';
import type { JudgedWeeks } from './judged-weeks.ts';
import { MILLISECONDS_PER_WEEK } from './log-times.ts';
import { asLogged, type Observation, observe } from './observation.ts';
import type { PlayedJob } from './played-jobs.ts';

/** What is played, and what is looked at. */
export interface LogPlay {
  readonly jobs: readonly PlayedJob[];
  readonly weeks: JudgedWeeks;
  /** Names of part types. */
  readonly parts: readonly string[];
  readonly seed: string;
  readonly executor: ReplicationExecutor;
  readonly stop: StopSignal | null;
  readonly onReplication: () => void;
}

/** Weeks from the start of the play to the end of the judged weeks. */
export function weeksPlayed({ playedFrom, to }: JudgedWeeks): number {
  return (to - playedFrom) / MILLISECONDS_PER_WEEK;
}

/**
 * Plays a lab that has the jobs of a log as its demand, and says of each replication what can be said of the log.
 *
 * @param first number of the first replication, from 0
 * @param count of replications
 * @returns in the order of the replications; null when somebody stopped
 */
export async function playLog(
  lab: Lab,
  first: number,
  count: number,
  play: LogPlay,
): Promise<Observation[] | null> {
  const { jobs, weeks, parts, seed, executor, stop, onReplication } = play;
  const settings = Array.from({ length: count }, (_, index) => ({
    seed,
    replication: first + index,
    ignoredWeeks: 0,
    weeks: weeksPlayed(weeks),
    capWeeks: 0,
    trace: false,
    queueWaits: false,
    followJobs: jobs.length,
  }));
  const endsOf = endsReader(lab, jobs, weeks.playedFrom);
  const found: Observation[] = [];
  let done = 0;
  for await (const history of executor.run(lab, settings, stop)) {
    found[history.replication - first] = observe(jobs, endsOf(history), weeks, parts);
    done++;
    onReplication();
  }
  return done === count ? found : null;
}

/** When the jobs of a replication were finished, as the log would have it. */
function endsReader(
  lab: Lab,
  jobs: readonly PlayedJob[],
  playedFrom: CivilTime,
): (history: History) => Float64Array {
  const localTime = createLocalTime(lab.clockChanges);
  const finished = jobs.filter(({ logged }) => logged.finished !== null);
  const withClock = finished.filter(({ logged }) => logged.finishedHasClock).length;
  const usuallyHasClock = 2 * withClock >= finished.length;
  return ({ followed = [] }) =>
    Float64Array.from(jobs, ({ logged }, position) => {
      const { endedAt } = followed[position] ?? { endedAt: Number.POSITIVE_INFINITY };
      const hasClock = logged.finished === null ? usuallyHasClock : logged.finishedHasClock;
      return asLogged(localTime.toLocal(endedAt) + playedFrom, hasClock);
    });
}
