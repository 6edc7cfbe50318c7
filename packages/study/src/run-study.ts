import type { Economics, Lab, StudySettings, Target } from '@buildweek/model';
import type { Caution, HandLeadTime, HandLoad, Run, TargetResult } from '@buildweek/results';
import { FEWEST_REPLICATIONS } from '@buildweek/statistics';
import { checkStudySettings } from './check-study-settings.ts';
import type { ReplicationExecutor, StopSignal } from './executor.ts';
import { withDifferences } from './hand/hand-difference.ts';
import { handLeadTimes } from './hand/lead-time/hand-lead-times.ts';
import { handLoads } from './hand/sure-loads.ts';
import { decideIgnoredWeeks } from './ignored-weeks.ts';
import type { StudyProgress } from './progress.ts';
import type { Measures } from './reduce/study-sums.ts';
import { type PlayedReplications, playReplications } from './replications.ts';
import { startEarlier } from './start-earlier.ts';
import { cautionsOf } from './words/cautions.ts';
import { headlineOf } from './words/headline.ts';
import { moneySentences } from './words/money-sentences.ts';
import { lawWarnings, loadWarnings, quarterWarnings, unfinishedWarnings } from './words/warnings.ts';

/** What a study finds out: `Results` without what only the reader of the scenario knows. */
export interface StudyResults extends Measures {
  readonly run: Run;
  readonly headline: string[];
  readonly targets: TargetResult[];
  readonly handCalculation: HandLoad[];
  readonly handLeadTimes: HandLeadTime[];
  readonly cautions: Caution[];
  readonly warnings: string[];
}

export type StudyOutcome =
  | { readonly kind: 'results'; readonly results: StudyResults }
  /** Somebody stopped before there were enough replications for any interval. */
  | { readonly kind: 'too few'; readonly replications: number; readonly reason: string };

export interface StudyOptions {
  /** Called after each replication, in their order. */
  readonly onProgress?: (progress: StudyProgress) => void;
  readonly stop?: StopSignal;
  /** Keep every single wait in every queue, for percentiles of waits. */
  readonly queueWaits?: boolean;
  /** What the scenario promises of the lab; whether it is met is said in the results. */
  readonly targets?: readonly Target[];
  /** What the lab and its work cost; without it nothing is said of money. */
  readonly economics?: Economics | null;
}

/**
 * Plays a lab many times and says what comes of it. The same lab and settings give the same results, whoever plays
 * the replications and in whatever order they come back.
 *
 * @throws RangeError with a sentence for the user when the settings cannot be played
 */
export async function runStudy(
  lab: Lab,
  settings: StudySettings,
  executor: ReplicationExecutor,
  options: StudyOptions = {},
): Promise<StudyOutcome> {
  checkStudySettings(settings);
  const { onProgress = () => {}, stop = null, queueWaits = false, targets = [], economics = null } = options;
  const pilotProgress = (done: number, total: number): void =>
    onProgress({ stage: 'pilot', done, total, mayEndSooner: false });
  const decided = await decideIgnoredWeeks(lab, settings, executor, pilotProgress, stop);
  if (decided === null) return tooFew(0);
  const { seed, weeks, capWeeks } = settings;
  const ignoredWeeks = decided.ignoredWeeks.weeks;
  const template = { seed, ignoredWeeks, weeks, capWeeks, trace: false, queueWaits };
  const mayEndSooner = settings.precision !== null;
  const played = await playReplications(
    startEarlier(lab, ignoredWeeks),
    settings,
    template,
    executor,
    (done, total) => onProgress({ stage: 'replications', done, total, mayEndSooner }),
    stop,
    targets,
    economics,
  );
  const { sums } = played;
  if (sums === null || sums.replications < FEWEST_REPLICATIONS) return tooFew(sums?.replications ?? 0);
  const measures = sums.measures(settings.level);
  const judged = sums.targets.results(weeks, settings.level);
  const loads = handLoads(lab, { fromWeek: 0, weeks });
  const run: Run = {
    seed,
    replications: sums.replications,
    replicationLimit: settings.precision === null ? (settings.replications ?? 0) : settings.replicationLimit,
    weeks,
    ignoredWeeks: decided.ignoredWeeks,
    capWeeks,
    level: settings.level,
    stopped: played.stopped,
    precision: precisionWords(settings, played),
  };
  const { jobs, unfinished } = sums.jobs.count();
  return {
    kind: 'results',
    results: {
      ...measures,
      run,
      targets: judged,
      headline: [
        ...headlineOf({
          targets: judged,
          jobs: measures.jobs,
          jobsInLab: measures.flow.jobsInLab,
          ...sums.forHeadline(settings.level),
          loads: loads.sure,
          sentOut: measures.sentOut,
          run,
          // The choice by MSER warns of nothing but a pilot that does not settle.
          pilotSettles: decided.ignoredWeeks.method !== 'chosen by MSER' || decided.warnings.length === 0,
        }),
        ...moneySentences(measures.money),
      ],
      handCalculation: loads.all,
      handLeadTimes: withDifferences(handLeadTimes(lab, { fromWeek: 0, weeks }), measures),
      cautions: cautionsOf(lab),
      warnings: [
        ...lawWarnings(measures.checks),
        ...loadWarnings(loads.sure),
        ...decided.warnings,
        ...quarterWarnings(targets, weeks),
        ...unfinishedWarnings(jobs, unfinished, capWeeks),
      ],
    },
  };
}

function tooFew(replications: number): StudyOutcome {
  const reason = `An interval needs at least ${FEWEST_REPLICATIONS} replications; ${replications} were finished.`;
  return { kind: 'too few', replications, reason };
}

function precisionWords(settings: StudySettings, played: PlayedReplications): Run['precision'] {
  const { precision } = settings;
  if (precision === null) return null;
  return {
    measure: `${precision.measure} of all jobs`,
    asked: precision.relativeHalfWidth,
    reached: played.precisionReached,
  };
}
