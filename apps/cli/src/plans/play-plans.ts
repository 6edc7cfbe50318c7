import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import type { Lab, StudySettings } from '@buildweek/model';
import type { IgnoredWeeks } from '@buildweek/results';
import {
  decideIgnoredWeeks,
  type MeasuresOfPlan,
  type ObservationJournal,
  ObservedPlans,
  type ReplicationExecutor,
  type StopSignal,
  UnanswerableError,
} from '@buildweek/study';
import { badInput, EXIT, Failure } from '../failure.ts';
import { UnfinishedFile } from '../files/unfinished-file.ts';
import { programVersion } from '../program-version.ts';
import { stopOnSignal } from '../stop-on-signal.ts';
import { ProgressBar } from '../terminal/progress-bar.ts';
import { WorkerExecutor } from '../workers/worker-executor.ts';
import type { PlanOptions } from './plan-options.ts';
import { resumeCommand } from './resume-command.ts';

/** What is to be played. */
export interface PlanWork {
  /** Name of the command. */
  readonly command: string;
  /** Scenario file, for names of files and for what to write to go on. */
  readonly path: string;
  /** Whatever else the observations depend on: texts of scenarios, changes, names. */
  readonly texts: readonly string[];
  /** What all plans are made from; the ignored weeks of the first hold for all. */
  readonly labs: readonly [Lab, ...Lab[]];
  readonly settings: StudySettings;
  readonly measures: MeasuresOfPlan;
}

/** What the work is done with. */
export interface PlanPlay {
  readonly plans: ObservedPlans;
  readonly settings: StudySettings;
  readonly ignoredWeeks: IgnoredWeeks;
  /** Warnings of the pilot. */
  readonly warnings: readonly string[];
  readonly executor: ReplicationExecutor;
  readonly stop: StopSignal;
  /**
   * The same with other measures, and plans of its own that may have the names of the others; it is kept and counted
   * with them.
   */
  apart(name: string, measures: MeasuresOfPlan): ObservedPlans;
  /** Says how far it is: of how many replications, as far as that is known. */
  expect(total: number, mayEndSooner: boolean): void;
}

/**
 * Plays plans on worker threads with a progress bar; after Ctrl-C the replications that are finished are kept, and
 * `--resume` goes on with them to the same answer.
 *
 * @param work gives the answer, or null when it was stopped
 * @throws Failure with exit code 130 when it was stopped
 */
export async function playPlans<Answer>(
  { command, path, texts, labs, settings, measures }: PlanWork,
  options: PlanOptions,
  work: (play: PlanPlay) => Promise<Answer | null>,
): Promise<Answer> {
  const file = openUnfinished(unfinishedPath(path, command, options), command, options.resume, [
    programVersion(),
    JSON.stringify(settings),
    // Labs besides texts: a scenario names files, and what is in them may have changed.
    ...labs.map((lab) => JSON.stringify(lab)),
    ...texts,
  ]);
  const { signal, forget } = stopOnSignal();
  const executor = new WorkerExecutor(options.workers ?? availableParallelism());
  const bar = new ProgressBar(process.stderr);
  let isDone = false;
  try {
    const decided = await decideIgnoredWeeks(
      labs[0],
      settings,
      executor,
      (done, total) => bar.show({ stage: 'pilot', done, total, mayEndSooner: false }),
      signal,
    );
    if (decided === null) throw stopped(file);
    let expected = { total: 0, mayEndSooner: false };
    const template = {
      seed: settings.seed,
      ignoredWeeks: decided.ignoredWeeks.weeks,
      weeks: settings.weeks,
      capWeeks: settings.capWeeks,
      trace: false,
      queueWaits: false,
    };
    const all: ObservedPlans[] = [];
    const observed = (of: MeasuresOfPlan, journal: ObservationJournal): ObservedPlans => {
      const own = new ObservedPlans({
        measures: of,
        template,
        executor,
        stop: signal,
        journal,
        onReplication: () => {
          const done = all.reduce((sum, one) => sum + one.replications, 0);
          bar.show({ stage: 'replications', done, ...expected, total: Math.max(done, expected.total) });
        },
      });
      all.push(own);
      return own;
    };
    const plans = observed(measures, file);
    const answer = await work({
      plans,
      apart: (name, of) => observed(of, apartIn(file, name)),
      settings,
      ignoredWeeks: decided.ignoredWeeks,
      warnings: decided.warnings,
      executor,
      stop: signal,
      expect: (total, mayEndSooner) => {
        expected = { total, mayEndSooner };
      },
    });
    if (answer === null) throw stopped(file);
    isDone = true;
    return answer;
  } catch (error) {
    throw error instanceof UnanswerableError ? badInput(error.message) : error;
  } finally {
    bar.clear();
    forget();
    if (isDone || !file.isWorthKeeping) file.remove();
    await executor.close();
  }
}

/** A part of a journal, in which plans have names of their own. */
function apartIn(journal: ObservationJournal, name: string): ObservationJournal {
  const own = (plan: string): string => `${name}: ${plan}`;
  return {
    read: (plan, replication) => journal.read(own(plan), replication),
    write: (plan, replication, observation) => journal.write(own(plan), replication, observation),
  };
}

function stopped(file: UnfinishedFile): Failure {
  if (!file.isWorthKeeping) return new Failure(EXIT.stopped, 'Stopped before anything was finished.');
  return new Failure(
    EXIT.stopped,
    `Stopped. What was played is kept in ${file.path}. Go on with: ${resumeCommand(process.argv.slice(2))}`,
  );
}

/** Beside the answer, or in the folder one is in. */
function unfinishedPath(path: string, command: string, { json }: PlanOptions): string {
  if (json !== undefined && json !== '-') return `${json}.unfinished`;
  const name = path === '-' ? 'scenario' : path.replace(/^.*[/\\]/, '').replace(/\.ya?ml$/i, '');
  return `${name}.${command}.unfinished`;
}

function openUnfinished(
  path: string,
  command: string,
  resume: boolean,
  texts: readonly string[],
): UnfinishedFile {
  const hash = createHash('sha256');
  for (const text of texts) hash.update(`${text.length}:${text}`);
  const fingerprint = hash.digest('hex');
  return resume
    ? UnfinishedFile.goOn(path, command, fingerprint)
    : UnfinishedFile.start(path, command, fingerprint);
}
