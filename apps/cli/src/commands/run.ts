import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { RESULTS_VERSION, type Results } from '@buildweek/results';
import { formatProblem } from '@buildweek/scenario';
import { handCalculation, loadWarnings, runStudy, type StudyResults } from '@buildweek/study';
import { Command, Option } from 'commander';
import { EXIT, type ExitCode, Failure } from '../failure.ts';
import { checkOutput, RESULTS_FILE, writeOutput } from '../files/output-file.ts';
import { readScenarioFile, type ScenarioFile } from '../files/scenario-file.ts';
import { programVersion } from '../program-version.ts';
import { labToday } from '../records/lab-today.ts';
import { stopOnSignal } from '../stop-on-signal.ts';
import { resultsText } from '../tables/results-text.ts';
import { ProgressBar } from '../terminal/progress-bar.ts';
import { styleFor } from '../terminal/style.ts';
import { WorkerExecutor } from '../workers/worker-executor.ts';
import { withChangesOption } from './changes-option.ts';
import { ignoredWeeksOption, precisionOption, wholeNumberOption } from './option-values.ts';
import { type RunOptions, settingsFrom } from './run-options.ts';
import { withTodayOptions } from './today-options.ts';

export function runCommand(): Command {
  const command = new Command('run')
    .summary('play a scenario many times and say what comes of it')
    .description(
      'Plays the lab of a scenario file many times and prints lead times, queues, machines, people and where the hours go, each with its confidence interval. What an option does not say, the scenario says.',
    )
    .argument('<file>', 'scenario file (YAML); - reads standard input');
  return withTodayOptions(withChangesOption(command))
    .option('--json <file>', 'write the results as JSON, for "buildweek report"; - for standard output')
    .option('--replications <number>', 'play so many replications, at least 20', wholeNumberOption(20))
    .addOption(
      new Option(
        '--precision <share>',
        'play until an interval is so narrow, as "5 % of p90 lead time" or just "5 %"',
      )
        .argParser(precisionOption)
        .conflicts('replications'),
    )
    .addOption(
      new Option('--at-most <number>', 'replications at most, when a precision decides')
        .argParser(wholeNumberOption(20))
        .conflicts('replications'),
    )
    .option('--weeks <number>', 'measure so many weeks', wholeNumberOption(1))
    .option(
      '--ignored-weeks <number>',
      'leave out so many weeks before them; auto chooses from a pilot',
      ignoredWeeksOption,
    )
    .option('--seed <text>', 'random numbers to play with; the same seed gives the same results')
    .option('--queue-waits', 'give percentiles of the waits in every queue too (in the JSON)', false)
    .option(
      '--workers <number>',
      'threads to play on; results do not depend on it (default: one for each core)',
      wholeNumberOption(1),
    )
    .option('--force', 'overwrite a file that is not results', false)
    .addHelpText(
      'after',
      `
Stop a long run with Ctrl-C: the replications that are finished are reported.
Exit codes: 0 done, 1 internal error, 2 bad input, 3 precision not reached, 130 stopped.

Examples:
  buildweek run scenarios/demo.yaml
  buildweek run scenarios/demo.yaml --json demo.json
  buildweek run scenarios/demo.yaml --with "resin / count: 2; technicians / count: 3"
  buildweek run scenarios/demo.yaml --precision "3 % of p90 lead time" --weeks 26`,
    )
    .action(run);
}

async function run(path: string, options: RunOptions): Promise<void> {
  const toStandardOutput = options.json === '-';
  if (options.json !== undefined && !toStandardOutput) checkOutput(options.json, RESULTS_FILE, options.force);
  const { file, told } = await labToday(readScenarioFile(path, options.with), path, options);
  for (const sentence of told) process.stderr.write(`${sentence}\n`);
  const { lab, warnings } = file.reading;
  const settings = settingsFrom(file.reading.settings, options);
  const errorStyle = styleFor(process.stderr);
  const loads = handCalculation(lab, { fromWeek: 0, weeks: settings.weeks });
  const { signal, forget } = stopOnSignal();
  for (const warning of [...warnings.map(formatProblem), ...loadWarnings(loads)]) {
    process.stderr.write(`${errorStyle.warning('Warning:')} ${warning}\n`);
  }
  const executor = new WorkerExecutor(options.workers ?? availableParallelism());
  const bar = new ProgressBar(process.stderr);
  try {
    const outcome = await runStudy(lab, settings, executor, {
      stop: signal,
      queueWaits: options.queueWaits,
      targets: file.reading.targets,
      economics: file.reading.economics,
      onProgress: (progress) => bar.show(progress),
    });
    bar.clear();
    if (outcome.kind === 'too few') {
      throw new Failure(EXIT.stopped, `Stopped. ${outcome.reason} There is nothing to report.`);
    }
    const results = resultsOf(file, outcome.results);
    report(results, options);
    process.exitCode = exitCodeOf(results);
  } finally {
    bar.clear();
    forget();
    await executor.close();
  }
}

export function resultsOf({ text, reading }: ScenarioFile, study: StudyResults): Results {
  const { lab, assumptions, warnings, files } = reading;
  const { run: played, headline, ...measures } = study;
  return {
    format: 'buildweek results',
    version: RESULTS_VERSION,
    program: { name: 'buildweek', version: programVersion() },
    scenario: {
      name: lab.name,
      text,
      hash: createHash('sha256').update(text).digest('hex'),
      files: [...files],
    },
    lab,
    run: played,
    headline,
    ...measures,
    assumptions: [...assumptions],
    warnings: [
      ...warnings.map((problem) => `Line ${problem.line} of the scenario: ${problem.message}`),
      ...measures.warnings,
    ],
  };
}

function report(results: Results, { json }: RunOptions): void {
  const text = `${JSON.stringify(results, null, 1)}\n`;
  if (json === '-') {
    process.stdout.write(text);
    return;
  }
  if (json !== undefined) writeOutput(json, text);
  process.stdout.write(resultsText(results, styleFor(process.stdout)));
  const next =
    json === undefined
      ? 'Add --json FILE to keep these results; "buildweek report FILE" makes a page of them.'
      : `Results are in ${json}. Make a page of them with: buildweek report ${json}`;
  process.stdout.write(`\n${next}\n`);
}

function exitCodeOf({ run: { stopped, replications } }: Results): ExitCode {
  if (stopped === 'limit reached') return EXIT.precisionNotReached;
  if (stopped !== 'stopped by the user') return EXIT.done;
  process.stderr.write(`Stopped after ${replications} replications; these are reported.\n`);
  return EXIT.stopped;
}
