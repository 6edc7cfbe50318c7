import { createLocalTime, type History } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { CivilTime, LoggedJobs } from '@buildweek/records';
import type { LeftOut, ReplayAnswer } from '@buildweek/results';
import type { ReplicationExecutor, StopSignal } from '../executor.ts';
import { UnanswerableError } from '../plans/unanswerable-error.ts';
import { type AskedWeeks, type JudgedWeeks, judgedWeeks } from './judged-weeks.ts';
import { labOfLog } from './lab-of-log.ts';
import { likelyCause } from './likely-cause.ts';
import { dayText, MILLISECONDS_PER_WEEK } from './log-times.ts';
import { asLogged, type Observation, observe } from './observation.ts';
import { type PlayedJob, playedJobs } from './played-jobs.ts';
import { replayFindings } from './replay-findings.ts';
import { replaySentences } from './replay-sentences.ts';
import { stageStudy } from './stage-study.ts';

/** A lab, and what its log says. */
export interface ReplayQuestion {
  /** Its plan starts on the Monday of the week in which the log begins; see `playedFrom`. */
  readonly lab: Lab;
  readonly log: LoggedJobs;
  readonly weeks: AskedWeeks;
  readonly seed: string;
  /** With the false-alarm rate such that the product of the rate and one more than these is whole. */
  readonly replications: number;
  /** In at most this share of uses a model that is right is called contradicted. */
  readonly falseAlarmRate: number;
}

/** What is found out of it. */
export type ReplayFound = Omit<
  ReplayAnswer,
  'format' | 'version' | 'program' | 'scenario' | 'log' | 'cautions' | 'warnings'
> & { readonly log: Omit<ReplayAnswer['log'], 'name'>; readonly warnings: string[] };

/** How it is played. */
export interface ReplayPlay {
  readonly executor: ReplicationExecutor;
  readonly stop: StopSignal | null;
  readonly onReplication: (done: number, total: number) => void;
}

/** Fewer judged jobs say next to nothing. */
const FEWEST_JOBS = 20;
/** Above this share of jobs with unknown parts the lab of the play has less to do than the real one had. */
const MANY_UNKNOWN = 0.05;

/**
 * Plays a lab with the very jobs that were asked for, and holds the judged weeks of the log against it.
 *
 * @returns null when somebody stopped
 * @throws UnanswerableError when the log says too little
 */
export async function replayStudy(question: ReplayQuestion, play: ReplayPlay): Promise<ReplayFound | null> {
  const { lab, log, seed, replications, falseAlarmRate } = question;
  const weeks = judgedWeeks(log, question.weeks);
  const { jobs, leftOut } = playedJobs(log, lab, weeks);
  checkJobs(jobs, weeks, leftOut);
  const parts = [...new Set(lab.demand.map(({ part }) => part))];
  const observed = observe(
    jobs,
    jobs.map(({ logged }) => logged.finished ?? Number.POSITIVE_INFINITY),
    weeks,
    parts,
  );
  const playedLab = labOfLog(lab, jobs);
  const simulated = await playLog(playedLab, jobs, weeks, parts, question, play);
  if (simulated === null) return null;
  const stages = await stageStudy(playedLab, jobs, weeks, seed, play.executor, play.stop);
  if (stages === null) return null;
  const held = replayFindings(observed, simulated, parts, weeks, falseAlarmRate);
  const found = {
    ...held,
    stages,
    parts: held.parts.map((part) => ({ ...part, cause: likelyCause(part, stages) })),
  };
  return {
    run: {
      seed,
      replications,
      playedFrom: dayText(weeks.playedFrom),
      playedWeeks: weeksPlayed(weeks),
      loggedDurations: [],
    },
    log: { from: dayText(log.from), until: dayText(log.until), jobs: jobs.length, leftOut },
    judged: {
      from: dayText(weeks.from),
      weeks: weeks.weeks,
      jobs: observed.all.jobs,
      learnedUntil: question.weeks.learnedUntil === null ? null : dayText(question.weeks.learnedUntil),
    },
    ...found,
    verdict: replaySentences(found, replications),
    warnings: warningsOf(question, weeks, jobs, leftOut),
  };
}

function weeksPlayed({ playedFrom, to }: JudgedWeeks): number {
  return (to - playedFrom) / MILLISECONDS_PER_WEEK;
}

async function playLog(
  lab: Lab,
  jobs: readonly PlayedJob[],
  weeks: JudgedWeeks,
  parts: readonly string[],
  { seed, replications }: ReplayQuestion,
  { executor, stop, onReplication }: ReplayPlay,
): Promise<Observation[] | null> {
  const settings = Array.from({ length: replications }, (_, replication) => ({
    seed,
    replication,
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
    found[history.replication] = observe(jobs, endsOf(history), weeks, parts);
    onReplication(++done, replications);
  }
  return done === replications ? found : null;
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

/** @throws UnanswerableError with what is missing */
function checkJobs(
  jobs: readonly PlayedJob[],
  { from, to, weeks }: JudgedWeeks,
  leftOut: readonly LeftOut[],
): void {
  const judged = jobs.filter(
    ({ logged, isJudged }) =>
      isJudged && logged.asked >= from && logged.finished !== null && logged.finished < to,
  );
  if (judged.length >= FEWEST_JOBS) return;
  const span = `In the ${weeks} judged weeks from ${dayText(from)}, ${judged.length === 0 ? 'no job' : `only ${judged.length} of the jobs that came`} was finished that can be held against the model; at least ${FEWEST_JOBS} are needed.`;
  const why = leftOut.map(
    (one) =>
      `${one.jobs} ${one.why === 'unknown part' ? 'of an unknown part' : one.why} (row ${one.rows.join(', ')}): ${one.what}`,
  );
  throw new UnanswerableError([span, ...why].join('\n'));
}

function warningsOf(
  { log, weeks: asked }: ReplayQuestion,
  weeks: JudgedWeeks,
  jobs: readonly PlayedJob[],
  leftOut: readonly LeftOut[],
): string[] {
  const warnings: string[] = [];
  if (asked.learnedUntil !== null && weeks.from < asked.learnedUntil) {
    warnings.push(
      `The scenario was learned from the log up to ${dayText(asked.learnedUntil)}, and weeks before that are judged: a model fits what it was learned from better than what comes after, so this is no fair check of it.`,
    );
  }
  const unknown = leftOut.filter(({ why }) => why === 'unknown part').reduce((sum, one) => sum + one.jobs, 0);
  if (unknown > MANY_UNKNOWN * (jobs.length + unknown)) {
    warnings.push(
      `${unknown} jobs of parts that the scenario does not know are missing in the play: the lab that is played has less to do than the one of the log had.`,
    );
  }
  if (weeks.from === weeks.playedFrom || weeks.from - log.from < 2 * MILLISECONDS_PER_WEEK) {
    warnings.push(
      'The judged weeks begin when the log does: the play starts with an empty lab, while the real one had work. Judge from a later week.',
    );
  }
  return warnings;
}
