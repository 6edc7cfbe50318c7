import { availableParallelism } from 'node:os';
import { basename } from 'node:path';
import { MILLISECONDS_PER_HOUR, MILLISECONDS_PER_WEEK } from '@buildweek/core';
import { REPLAY_VERSION, type ReplayAnswer } from '@buildweek/results';
import { cautionsOf, mondayBefore, replayStudy, UnanswerableError } from '@buildweek/study';
import { Command } from 'commander';
import { badInput, EXIT, Failure } from '../failure.ts';
import { REPLAY_FILE } from '../files/output-file.ts';
import { readChangedScenario, readScenarioFile, type ScenarioFile } from '../files/scenario-file.ts';
import { answeredScenario, checkKept, keepAnswer, tellWarnings, warningWords } from '../plans/plan-answer.ts';
import { programVersion } from '../program-version.ts';
import { type ReadLog, readLog } from '../records/read-log.ts';
import { stopOnSignal } from '../stop-on-signal.ts';
import { replayText } from '../tables/replay-text.ts';
import { ProgressBar } from '../terminal/progress-bar.ts';
import { styleFor } from '../terminal/style.ts';
import { WorkerExecutor } from '../workers/worker-executor.ts';
import { type ChangesOptions, withChangesOption } from './changes-option.ts';
import { dayOption, shareOption, wholeNumberOption } from './option-values.ts';

interface ReplayOptions extends ChangesOptions {
  readonly mapping?: string;
  readonly judgedFrom?: number;
  readonly learnedUntil?: number;
  readonly withDurations: boolean;
  readonly wouldSee?: number;
  readonly replications: number;
  readonly falseAlarms: number;
  readonly seed?: string;
  readonly workers?: number;
  readonly json?: string;
  readonly page?: string;
  readonly force: boolean;
}

/** With a false-alarm rate of 5 % the ten most unusual of 200 histories contradict the model. */
const USUAL_REPLICATIONS = 199;
const FEWEST_REPLICATIONS = 39;
const USUAL_FALSE_ALARMS = 0.05;

export function replayCommand(): Command {
  const command = new Command('replay')
    .summary("hold a scenario against the lab's own log: does the model do what the lab did?")
    .description(
      'Plays the period of the log with the very jobs that were asked for, many times, and holds what happened against it: lead times, jobs finished a week, jobs in the lab, for every part. Judges weeks that were not used for learning (else the last third of the log), and calls a model that is right contradicted no more often than stated.',
    )
    .argument('<file>', 'scenario file (YAML)')
    .argument('<log>', 'table of requests (CSV), as "buildweek from-log" reads it');
  return withChangesOption(command)
    .option('--mapping <file>', 'what the columns and parts of the log are (YAML), where the guess is wrong')
    .option('--judged-from <date>', 'judge the weeks from this day on', dayOption)
    .option(
      '--learned-until <date>',
      'the scenario was learned from the log up to this day (default: what the scenario says)',
      dayOption,
    )
    .option(
      '--with-durations',
      'let work take as long as the log says, where it has start and end of the work itself',
      false,
    )
    .option(
      '--would-see <share>',
      'say how often this check would see work or printing that takes so much longer than modelled, as "30 %"',
      shareOption,
    )
    .option(
      '--replications <number>',
      `play the log so often, at least ${FEWEST_REPLICATIONS}`,
      wholeNumberOption(FEWEST_REPLICATIONS),
      USUAL_REPLICATIONS,
    )
    .option(
      '--false-alarms <share>',
      'how often at most a model that is right may be called contradicted (default: 5 %)',
      shareOption,
      USUAL_FALSE_ALARMS,
    )
    .option('--seed <text>', 'random numbers to play with; the same seed gives the same answer')
    .option(
      '--workers <number>',
      'threads to play on; the answer does not depend on it (default: one for each core)',
      wholeNumberOption(1),
    )
    .option('--json <file>', 'write the answer as JSON; - for standard output')
    .option('--page <file>', 'write the answer as one HTML page')
    .option('--force', 'overwrite files that this command did not write', false)
    .addHelpText(
      'after',
      `
Examples:
  buildweek replay scenarios/demo.yaml scenarios/demo-log.csv
  buildweek replay lab.yaml requests.csv --learned-until 2026-10-04 --page replay.html`,
    )
    .action(replay);
}

async function replay(path: string, logPath: string, options: ReplayOptions): Promise<void> {
  checkKept({ ...options, resume: false }, REPLAY_FILE);
  checkReplications(options);
  const stated = readScenarioFile(path, options.with);
  const log = await readLog(logPath, {
    mapping: options.mapping,
    zone: stated.reading.scenario.zone,
    knownParts: stated.reading.lab.demand.flatMap(({ name, part }) => [name, part]),
  });
  // The play starts when the log does: closing days, leave and clock changes are then at their dates.
  const from = mondayBefore(log.from);
  const weeks = Math.max(1, Math.ceil((log.until - from) / MILLISECONDS_PER_WEEK));
  const file = readChangedScenario(
    stated,
    path,
    `starts: ${new Date(from).toISOString().slice(0, 10)}; simulate / weeks: ${weeks}; simulate / ignored weeks: 0`,
  );
  tellWarnings(file);
  const answer = await played(file, log, basename(logPath), options);
  await keepAnswer(
    answer,
    { ...options, resume: false },
    replayText(answer, styleFor(process.stdout)),
    async () => (await import('@buildweek/report')).renderReplay(answer),
  );
}

/** @throws Failure with exit code 130 when it was stopped, and for bad input when the log says too little */
async function played(
  file: ScenarioFile,
  log: ReadLog,
  name: string,
  options: ReplayOptions,
): Promise<ReplayAnswer> {
  const { lab, settings } = file.reading;
  const { signal, forget } = stopOnSignal();
  const executor = new WorkerExecutor(options.workers ?? availableParallelism());
  const bar = new ProgressBar(process.stderr);
  try {
    const found = await replayStudy(
      {
        lab,
        log,
        weeks: {
          judgedFrom: options.judgedFrom ?? null,
          learnedUntil: learnedUntilOf(options, file),
        },
        seed: options.seed ?? settings.seed,
        replications: options.replications,
        falseAlarmRate: options.falseAlarms,
        withDurations: options.withDurations,
        wouldSee: options.wouldSee ?? null,
      },
      {
        executor,
        stop: signal,
        onReplication: (done, total) => bar.show({ stage: 'replications', done, total, mayEndSooner: false }),
      },
    );
    if (found === null)
      throw new Failure(EXIT.stopped, 'Stopped before it was finished; nothing was written.');
    return {
      format: 'buildweek replay',
      version: REPLAY_VERSION,
      program: { name: 'buildweek', version: programVersion() },
      scenario: answeredScenario(file),
      ...found,
      log: { name, ...found.log },
      cautions: cautionsOf(lab),
      warnings: [...warningWords(file), ...found.warnings],
    };
  } catch (error) {
    throw error instanceof UnanswerableError ? badInput(`${name}: ${error.message}`) : error;
  } finally {
    bar.clear();
    forget();
    await executor.close();
  }
}

/** @throws Failure for bad input when no history could be unusual enough */
function checkReplications({ replications, falseAlarms }: ReplayOptions): void {
  const needed = Math.ceil(1 / falseAlarms - 1e-9) - 1;
  if (replications >= needed) return;
  throw badInput(
    `With ${replications} replications a false-alarm rate of ${falseAlarms * 100} % cannot be kept: the most unusual of ${replications + 1} histories is one of them in ${(100 / (replications + 1)).toFixed(1)} % of uses. Give --replications ${needed}`,
  );
}

/** The end of the day up to which the scenario was learned: as the user says, or "from-log" wrote on top of it. */
function learnedUntilOf({ learnedUntil }: ReplayOptions, { text }: ScenarioFile): number | null {
  const said = /^# buildweek from-log: learned from .* up to (\d{4}-\d{2}-\d{2})/.exec(text)?.[1];
  const day = learnedUntil ?? (said === undefined ? null : Date.parse(said));
  return day === null ? null : day + 24 * MILLISECONDS_PER_HOUR;
}
