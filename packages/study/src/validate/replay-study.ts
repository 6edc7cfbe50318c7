import type { Lab } from '@buildweek/model';
import type { CivilTime, LoggedJobs } from '@buildweek/records';
import type { LeftOut, ReplayAnswer } from '@buildweek/results';
import type { ReplicationExecutor, StopSignal } from '../executor.ts';
import { UnanswerableError } from '../plans/unanswerable-error.ts';
import { type AskedWeeks, type JudgedWeeks, judgedWeeks } from './judged-weeks.ts';
import { labOfLog, type TimedStages, timedStages } from './lab-of-log.ts';
import { likelyCause } from './likely-cause.ts';
import { dayText, MILLISECONDS_PER_WEEK } from './log-times.ts';
import { knownStages } from './logged-stages.ts';
import { observe } from './observation.ts';
import { playLog, weeksPlayed } from './play-log.ts';
import { type PlayedJob, playedJobs } from './played-jobs.ts';
import { replayFindings } from './replay-findings.ts';
import { replaySentences } from './replay-sentences.ts';
import { stageStudy } from './stage-study.ts';
import { LOGS_OF_EACH, whatMaySlow, wouldSee } from './would-see.ts';

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
  /** Whether work takes as long as the log says, where it has start and end of the work itself. */
  readonly withDurations: boolean;
  /** Say what the check would see if something took longer by so large a share; null: do not. */
  readonly wouldSee: number | null;
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
  const known = knownStages(lab, jobs);
  const timed: TimedStages = question.withDurations ? timedStages(lab, known) : new Map();
  const playedLab = labOfLog(lab, jobs, timed);
  const { executor, stop } = play;
  const total =
    replications + (question.wouldSee === null ? 0 : whatMaySlow(playedLab).length * LOGS_OF_EACH);
  let done = 0;
  const logPlay = {
    jobs,
    weeks,
    parts,
    seed,
    executor,
    stop,
    onReplication: () => play.onReplication(++done, total),
  };
  const simulated = await playLog(playedLab, 0, replications, logPlay);
  if (simulated === null) return null;
  const stages = await stageStudy(playedLab, jobs, known, weeks, seed, executor, stop);
  if (stages === null) return null;
  const seen =
    question.wouldSee === null
      ? []
      : await wouldSee(playedLab, simulated, 1 + question.wouldSee, falseAlarmRate, logPlay);
  if (seen === null) return null;
  const held = replayFindings(observed, simulated, parts, weeks, falseAlarmRate);
  const found = {
    ...held,
    stages,
    parts: held.parts.map((part) => ({ ...part, cause: likelyCause(part, stages) })),
    wouldSee: seen,
  };
  return {
    run: {
      seed,
      replications,
      playedFrom: dayText(weeks.playedFrom),
      playedWeeks: weeksPlayed(weeks),
      loggedDurations: [...timed].flatMap(([part, stages]) => stages.map(({ stage }) => `${part}: ${stage}`)),
    },
    log: { from: dayText(log.from), until: dayText(log.until), jobs: jobs.length, leftOut },
    judged: {
      from: dayText(weeks.from),
      weeks: weeks.weeks,
      jobs: observed.all.jobs,
      learnedUntil: question.weeks.learnedUntil === null ? null : lastDay(question.weeks.learnedUntil),
    },
    ...found,
    verdict: replaySentences(found, replications),
    warnings: warningsOf(question, weeks, jobs, leftOut, timed),
  };
}

/** The last day before a moment. */
function lastDay(time: CivilTime): string {
  return dayText(time - 1);
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
  { log, weeks: asked, withDurations }: ReplayQuestion,
  weeks: JudgedWeeks,
  jobs: readonly PlayedJob[],
  leftOut: readonly LeftOut[],
  timed: TimedStages,
): string[] {
  const warnings: string[] = [];
  if (asked.learnedUntil !== null && weeks.from < asked.learnedUntil) {
    warnings.push(
      `The scenario was learned from the log up to ${lastDay(asked.learnedUntil)}, and weeks before that are judged: a model fits what it was learned from better than what comes after, so this is no fair check of it. Learn from the first part of the log alone: buildweek from-log … --until ${dayText(log.from + (2 * (log.until - log.from)) / 3)}`,
    );
  }
  const unknown = leftOut.filter(({ why }) => why === 'unknown part').reduce((sum, one) => sum + one.jobs, 0);
  if (unknown > MANY_UNKNOWN * (jobs.length + unknown)) {
    warnings.push(
      `${unknown} jobs of parts that the scenario does not know are missing in the play: the lab that is played has less to do than the one of the log had.`,
    );
  }
  if (withDurations && [...timed.values()].every((stages) => stages.length === 0)) {
    warnings.push(
      'The log has start and end of the work itself at no stage whose time is that of a job: all durations are drawn as the scenario says.',
    );
  }
  if (weeks.from === weeks.playedFrom || weeks.from - log.from < 2 * MILLISECONDS_PER_WEEK) {
    warnings.push(
      'The judged weeks begin when the log does: the play starts with an empty lab, while the real one had work. Judge from a later week.',
    );
  }
  return warnings;
}
