import { createHash } from 'node:crypto';
import type { AnsweredScenario, PlanRun } from '@buildweek/results';
import { formatProblem } from '@buildweek/scenario';
import { checkOutput, type OutputKind, REPORT_FILE, writeOutput } from '../files/output-file.ts';
import type { ScenarioFile } from '../files/scenario-file.ts';
import { styleFor } from '../terminal/style.ts';
import type { PlanOptions } from './plan-options.ts';
import type { PlanPlay } from './play-plans.ts';

/** The scenario as an answer holds it. */
export function answeredScenario({ text, reading }: ScenarioFile): AnsweredScenario {
  return { name: reading.lab.name, text, hash: createHash('sha256').update(text).digest('hex') };
}

/** How it was played, as an answer says it. */
export function planRun({ ignoredWeeks, settings }: PlanPlay, replications: number): PlanRun {
  return {
    seed: settings.seed,
    replications,
    weeks: settings.weeks,
    ignoredWeeks,
    capWeeks: settings.capWeeks,
    level: settings.level,
  };
}

/** Targets that an answer does not look at. */
export function leftOutWords(wordings: readonly string[]): string[] {
  if (wordings.length === 0) return [];
  return [
    `Targets on money are not looked at: ${wordings.map((one) => `“${one}”`).join(', ')}; "buildweek run" judges them.`,
  ];
}

/** What is odd in a scenario, said before any work is done. */
export function tellWarnings({ reading: { warnings } }: ScenarioFile): void {
  const style = styleFor(process.stderr);
  for (const warning of warnings) {
    process.stderr.write(`${style.warning('Warning:')} ${formatProblem(warning)}\n`);
  }
}

/** What is odd in a scenario, as an answer says it. */
export function warningWords({ reading: { warnings } }: ScenarioFile): string[] {
  return warnings.map(({ line, message }) => `Line ${line} of the scenario: ${message}`);
}

/** Makes sure, before any work is done, that the answer can be kept. @throws Failure for bad input */
export function checkKept({ json, page, force }: PlanOptions, kind: OutputKind): void {
  if (json !== undefined && json !== '-') checkOutput(json, kind, force);
  if (page !== undefined) checkOutput(page, REPORT_FILE, force);
}

/**
 * Writes the answer where it was asked for, and on the terminal.
 *
 * @param text for the terminal
 * @param render makes the page; charts take a while to load, so it is only called when there is to be one
 */
export async function keepAnswer(
  answer: unknown,
  { json, page }: PlanOptions,
  text: string,
  render: () => Promise<string>,
): Promise<void> {
  const document = `${JSON.stringify(answer, null, 1)}\n`;
  if (json === '-') process.stdout.write(document);
  else if (json !== undefined) writeOutput(json, document);
  if (page !== undefined) {
    writeOutput(page, await render());
    process.stderr.write(`The page is in ${page}. Open it in a browser.\n`);
  }
  if (json !== '-') process.stdout.write(text);
}
