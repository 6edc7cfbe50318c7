import { availableParallelism } from 'node:os';
import { Command } from 'commander';
import { EXIT, type ExitCode, Failure } from '../failure.ts';
import { checkOutput, type OutputKind, writeOutput } from '../files/output-file.ts';
import { programVersion } from '../program-version.ts';
import { THEORY_CASES } from '../selfcheck/cases/index.ts';
import { checkAll } from '../selfcheck/check-all.ts';
import type { CheckedLine } from '../selfcheck/check-case.ts';
import { stopOnSignal } from '../stop-on-signal.ts';
import { intervalOf, selfcheckText } from '../tables/selfcheck-table.ts';
import { ProgressBar } from '../terminal/progress-bar.ts';
import { styleFor } from '../terminal/style.ts';
import { WorkerExecutor } from '../workers/worker-executor.ts';
import { wholeNumberOption } from './option-values.ts';

const SELFCHECK_FILE: OutputKind = {
  name: 'a self-check',
  mark: /^\s*\{\s*"format":\s*"buildweek selfcheck"/,
};

interface SelfcheckOptions {
  readonly seed: string;
  readonly json?: string;
  readonly workers?: number;
  readonly force: boolean;
}

export function selfcheckCommand(): Command {
  return new Command('selfcheck')
    .summary('hold the installed program against queues that theory has answers for')
    .description(
      'Plays the standard queues of the textbooks the way of every scenario, and prints theory, simulation, interval and verdict for each. Takes less than a minute.',
    )
    .option('--seed <text>', 'random numbers to play with; any seed will do', 'selfcheck')
    .option('--json <file>', 'write the lines as JSON; - for standard output')
    .option(
      '--workers <number>',
      'threads to play on; results do not depend on it (default: one for each core)',
      wholeNumberOption(1),
    )
    .option('--force', 'overwrite a file that is not a self-check', false)
    .addHelpText(
      'after',
      `
Exit codes: 0 every line holds, 1 a line fails or internal error, 2 bad input, 130 stopped.

Examples:
  buildweek selfcheck
  buildweek selfcheck --seed "another one" --json selfcheck.json`,
    )
    .action(selfcheck);
}

async function selfcheck({ seed, json, workers, force }: SelfcheckOptions): Promise<void> {
  if (json !== undefined && json !== '-') checkOutput(json, SELFCHECK_FILE, force);
  const { signal, forget } = stopOnSignal();
  const executors = Array.from({ length: workers ?? availableParallelism() }, () => new WorkerExecutor(1));
  const bar = new ProgressBar(process.stderr);
  try {
    const lines = await checkAll(THEORY_CASES, {
      seed,
      executors,
      stop: signal,
      onProgress: (done, total) => bar.show({ stage: 'replications', done, total, mayEndSooner: false }),
    });
    bar.clear();
    if (lines === null) throw new Failure(EXIT.stopped, 'Stopped. Nothing was found out.');
    report(lines, seed, json);
  } finally {
    bar.clear();
    forget();
    await Promise.all(executors.map((executor) => executor.close()));
  }
}

function report(lines: readonly CheckedLine[], seed: string, json: string | undefined): void {
  process.exitCode = exitCodeOf(lines);
  const document = {
    format: 'buildweek selfcheck',
    version: 1,
    program: { name: 'buildweek', version: programVersion() },
    seed,
    holds: process.exitCode === EXIT.done,
    lines: lines.map((line) => ({ ...line, interval: intervalOf(line) })),
  };
  const text = `${JSON.stringify(document, null, 1)}\n`;
  if (json === '-') {
    process.stdout.write(text);
    return;
  }
  if (json !== undefined) writeOutput(json, text);
  process.stdout.write(selfcheckText(lines, seed, styleFor(process.stdout)));
}

/** A check in which a line fails ends like an error of the program, for it is one. */
export function exitCodeOf(lines: readonly CheckedLine[]): ExitCode {
  return lines.every(({ holds }) => holds) ? EXIT.done : EXIT.internalError;
}
