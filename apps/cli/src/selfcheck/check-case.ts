import { studentQuantile } from '@buildweek/numbers';
import { type Estimate, parseResults, type Results } from '@buildweek/results';
import { formatProblem, readScenario } from '@buildweek/scenario';
import { theoryVerdict } from '@buildweek/statistics';
import { type ReplicationExecutor, runStudy, type StopSignal } from '@buildweek/study';
import { resultsOf } from '../commands/run.ts';
import type { TheoryCase, TheoryValue } from './theory-case.ts';

/** One value of theory beside what was played. */
export interface CheckedLine {
  readonly name: string;
  readonly source: string;
  readonly what: string;
  readonly unit: TheoryValue['unit'];
  readonly theory: number;
  readonly simulated: Estimate;
  /** Of the simulated value, on the side of theory. */
  readonly standardError: number;
  /** (simulated - theory) / standard error, and how far from 0 it may lie. */
  readonly score: number;
  readonly limit: number;
  readonly holds: boolean;
}

/** How a case is played. */
export interface CheckOptions {
  readonly seed: string;
  /** All lines of the same check: they share one rate of false alarms. */
  readonly lines: number;
  readonly executor: ReplicationExecutor;
  readonly stop: StopSignal | null;
  /** Called after each replication. */
  readonly onReplication: () => void;
}

/**
 * Plays a case the way of every scenario, from its text to a results document that is written and read again, and
 * holds it against theory.
 *
 * @returns null when somebody stopped it
 * @throws Error when the case cannot be played, warns, or breaks a law; that is a fault of the program
 */
export async function checkCase(
  theoryCase: TheoryCase,
  options: CheckOptions,
): Promise<CheckedLine[] | null> {
  const results = await play(theoryCase, options);
  if (results === null) return null;
  const broken = results.checks.filter((check) => !check.holds).map(({ law }) => law);
  if (broken.length > 0)
    throw new Error(`${theoryCase.name}: ${broken.join(' and ')}: not true in every record.`);
  return theoryCase.values.map((value) => lineOf(theoryCase, value, results, options.lines));
}

async function play({ name, scenario }: TheoryCase, options: CheckOptions): Promise<Results | null> {
  const { seed, executor, stop, onReplication } = options;
  const reading = readScenario(scenario, name);
  if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
  const settings = { ...reading.settings, seed: `${seed}: ${name}` };
  const outcome = await runStudy(reading.lab, settings, executor, {
    ...(stop === null ? {} : { stop }),
    onProgress: onReplication,
  });
  if (outcome.kind === 'too few' || outcome.results.run.stopped === 'stopped by the user') return null;
  return parseResults(JSON.stringify(resultsOf({ text: scenario, reading }, outcome.results)));
}

function lineOf(
  { name, source }: TheoryCase,
  { what, unit, theory, read }: TheoryValue,
  results: Results,
  lines: number,
): CheckedLine {
  const simulated = read(results);
  if (simulated?.kind !== 'estimate') {
    throw new Error(`${name}, ${what}: ${simulated?.reason ?? 'the results do not have it'}`);
  }
  const { value, low, high, level, replications } = simulated;
  const halfWidth = theory > value ? high - value : value - low;
  const standardError = halfWidth / studentQuantile((1 + level) / 2, replications - 1);
  const { score, limit, agrees } = theoryVerdict({
    estimate: value,
    standardError,
    degreesOfFreedom: replications - 1,
    truth: theory,
    assertions: lines,
  });
  return { name, source, what, unit, theory, simulated, standardError, score, limit, holds: agrees };
}
