import type { CivilTime, LoggedJobs } from '@buildweek/records';
import { UnanswerableError } from '../plans/unanswerable-error.ts';
import { dayText, MILLISECONDS_PER_WEEK, mondayAfter, mondayBefore } from './log-times.ts';

/** The weeks that are played, and those of them that are judged. Weeks begin on Monday. */
export interface JudgedWeeks {
  /** Monday from which the lab is played. */
  readonly playedFrom: CivilTime;
  /** First and last moment of the judged weeks. */
  readonly from: CivilTime;
  readonly to: CivilTime;
  readonly weeks: number;
}

/** What the user says of the weeks; what is null is decided here. */
export interface AskedWeeks {
  /** The first week that is judged begins at or after this moment. */
  readonly judgedFrom: CivilTime | null;
  /** The scenario was learned from the log up to this moment. */
  readonly learnedUntil: CivilTime | null;
}

/** Fewer weeks say next to nothing. */
const FEWEST_WEEKS = 4;
/** Where nothing else is said, this share of the weeks of the log is judged. */
const USUAL_SHARE = 1 / 3;
/** Weeks that are played before the first judged one where nothing else is said, so that the lab is no longer empty. */
const USUAL_RUN_IN = 4;

/**
 * Chooses the weeks that are judged: those that were not used for learning; the last third of the log where nothing
 * is said of learning, or nothing is left. Only whole
 * weeks are judged.
 *
 * @throws UnanswerableError when the log is too short, or says nothing of what was asked for
 */
export function judgedWeeks(
  { from, until }: Pick<LoggedJobs, 'from' | 'until'>,
  { judgedFrom, learnedUntil }: AskedWeeks,
): JudgedWeeks {
  const playedFrom = mondayBefore(from);
  const to = mondayBefore(until);
  const firstWhole = mondayAfter(from);
  const whole = Math.max(0, (to - firstWhole) / MILLISECONDS_PER_WEEK);
  if (whole < FEWEST_WEEKS + USUAL_RUN_IN && judgedFrom === null) {
    throw new UnanswerableError(
      `The log goes from ${dayText(from)} to ${dayText(until)}: ${weeksWords(whole)}. At least ${USUAL_RUN_IN + FEWEST_WEEKS} are needed, ${USUAL_RUN_IN} to let the lab fill and ${FEWEST_WEEKS} to judge. Give a longer log, or choose the first judged week with --judged-from.`,
    );
  }
  const last = to - Math.max(FEWEST_WEEKS, Math.round(whole * USUAL_SHARE)) * MILLISECONDS_PER_WEEK;
  const unseen =
    learnedUntil === null
      ? last
      : Math.max(mondayAfter(learnedUntil), firstWhole + USUAL_RUN_IN * MILLISECONDS_PER_WEEK);
  // Where everything was used for learning, the check is still made; that it is no fair one is said with the answer.
  const usual = to - unseen < FEWEST_WEEKS * MILLISECONDS_PER_WEEK ? last : unseen;
  const first = Math.max(firstWhole, judgedFrom === null ? usual : mondayAfter(judgedFrom));
  const weeks = (to - first) / MILLISECONDS_PER_WEEK;
  if (weeks < FEWEST_WEEKS) throw new UnanswerableError(tooFew(first, to));
  return { playedFrom, from: first, to, weeks };
}

function tooFew(first: CivilTime, to: CivilTime): string {
  const left = Math.max(0, (to - first) / MILLISECONDS_PER_WEEK);
  return `From ${dayText(first)}, the log has ${weeksWords(left)} up to ${dayText(to)}; at least ${FEWEST_WEEKS} are needed to judge. Give an earlier --judged-from.`;
}

function weeksWords(weeks: number): string {
  return weeks === 1 ? '1 whole week' : `${weeks} whole weeks`;
}
