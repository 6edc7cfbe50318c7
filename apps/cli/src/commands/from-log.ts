import { formatProblem, isZone, nearest, zoneNames } from '@buildweek/scenario';
import { Command } from 'commander';
import { badInput } from '../failure.ts';
import {
  checkOutput,
  FROM_LOG_FILE,
  LEARNED_FILE,
  MAPPING_FILE,
  REPORT_FILE,
  writeOutput,
} from '../files/output-file.ts';
import { readingOf, readScenarioFile } from '../files/scenario-file.ts';
import { changeFromLog } from '../records/change-from-log.ts';
import { learnedAnswer } from '../records/learned-answer.ts';
import { logFacts } from '../records/log-facts.ts';
import { mappingText } from '../records/mapping-text.ts';
import { type ReadLog, readLog } from '../records/read-log.ts';
import { scenarioFromLog } from '../records/scenario-from-log.ts';
import { learnedWordsText } from '../tables/learned-words-text.ts';
import { logText } from '../tables/log-text.ts';
import { styleFor } from '../terminal/style.ts';
import { dayOption } from './option-values.ts';

const DAY = 86_400_000;
/** Less of a log says too little of a demand. */
const FEWEST_WEEKS = 4;

interface FromLogOptions {
  readonly machines?: string;
  readonly mapping?: string;
  readonly mappingOut?: string;
  readonly zone?: string;
  readonly until?: number;
  readonly scenario?: string;
  readonly output?: string;
  readonly json?: string;
  readonly page?: string;
  readonly keepRequesters: boolean;
  readonly force: boolean;
}

export function fromLogCommand(): Command {
  return new Command('from-log')
    .summary("learn the demand from the lab's own list of requests")
    .description(
      'Reads a table of past requests in whatever columns and date formats the lab has, says what was understood of it and what is wrong with its rows, and makes a scenario of it: whole from the log alone, or the demand of one that is there.',
    )
    .argument('<log>', 'table of requests (CSV)')
    .option('--machines <file>', 'records of machines (CSV): machine, start, end, outcome of each run')
    .option('--mapping <file>', 'what the columns are (YAML), where the guess is wrong')
    .option('--mapping-out <file>', 'write down what was guessed, ready to be corrected')
    .option('--scenario <file>', 'scenario (YAML) whose demand is replaced; the rest of it stays')
    .option('--output <file>', 'write the scenario; - for standard output')
    .option('--page <file>', 'write what was learned as one HTML page')
    .option('--json <file>', 'write what was learned as JSON; - for standard output')
    .option('--zone <zone>', 'zone of the lab, such as Europe/Lisbon')
    .option(
      '--until <date>',
      'learn from the log up to the end of this day only, so that "replay" can judge what comes after',
      dayOption,
    )
    .option('--keep-requesters', 'keep the names of who asked', false)
    .option('--force', 'overwrite files that this command did not write', false)
    .addHelpText(
      'after',
      `
Examples:
  buildweek from-log scenarios/demo-log.csv --machines scenarios/demo-machines.csv --output first.yaml
  buildweek from-log scenarios/demo-log.csv --until 2026-10-18 --output first.yaml
  buildweek replay first.yaml scenarios/demo-log.csv
  buildweek from-log scenarios/demo-log.csv --scenario scenarios/demo.yaml --output now.yaml

Columns are found by their headings, in several languages, and by what is in them. Where that
goes wrong, write down the guess, correct it, and hand it in:
  buildweek from-log requests.csv --mapping-out requests.yaml
  buildweek from-log requests.csv --mapping requests.yaml`,
    )
    .action(fromLog);
}

async function fromLog(path: string, options: FromLogOptions): Promise<void> {
  const { mappingOut, output, json, page, force } = options;
  checkZone(options.zone);
  if (mappingOut !== undefined) checkOutput(mappingOut, MAPPING_FILE, force);
  if (output !== undefined && output !== '-') checkOutput(output, FROM_LOG_FILE, force);
  if (json !== undefined && json !== '-') checkOutput(json, LEARNED_FILE, force);
  if (page !== undefined) checkOutput(page, REPORT_FILE, force);
  if (json === '-' && output === '-') {
    throw badInput('Only one of --output and --json can be standard output.');
  }
  const base = options.scenario === undefined ? null : readScenarioFile(options.scenario);
  const log = await readLog(path, {
    machines: options.machines,
    mapping: options.mapping,
    zone: options.zone ?? base?.reading.scenario.zone,
    knownParts: base === null ? [] : base.reading.scenario.parts.map(({ name }) => name),
    keepsRequesters: options.keepRequesters,
  });
  const facts = logFacts(log, untilOf(options.until, log));
  const made = base === null ? scenarioFromLog(log, facts) : changeFromLog(base, log, facts);
  if (output !== undefined && output !== '-') checkReadable(made.text, output, options.scenario);
  const answer = learnedAnswer(log, facts, made);
  const document = `${JSON.stringify(answer, null, 1)}\n`;
  if (mappingOut !== undefined) writeOutput(mappingOut, mappingText(log));
  if (page !== undefined) writeOutput(page, (await import('@buildweek/report')).renderLearned(answer));
  if (json !== undefined && json !== '-') writeOutput(json, document);
  if (output !== undefined && output !== '-') writeOutput(output, made.text);
  if (output === '-' || json === '-') {
    process.stdout.write(output === '-' ? made.text : document);
    return;
  }
  const style = styleFor(process.stdout);
  process.stdout.write(
    `${logText(answer.reading, style)}\n\n${learnedWordsText(answer, style)}\n\n${nextStep(output)}\n`,
  );
}

/** A scenario may name files, which are looked for beside it: in another folder they are not there. */
function checkReadable(text: string, output: string, base: string | undefined): void {
  const reading = readingOf(text, output, '');
  if (reading.kind === 'scenario') return;
  const problems = reading.problems.map(formatProblem).join('\n\n');
  if (base === undefined) throw new Error(problems);
  throw badInput(
    `${problems}\n\nThe changed scenario cannot be read as ${output}; nothing was written. Files that it names stand beside ${base}: write it there.`,
  );
}

function nextStep(output: string | undefined): string {
  return output === undefined
    ? 'Write it down as a scenario with --output FILE.yaml.'
    : `Written: ${output}. See how it is understood with: buildweek check ${output}`;
}

function checkZone(zone: string | undefined): void {
  if (zone === undefined || isZone(zone)) return;
  const meant = nearest(zone, zoneNames()) ?? 'Europe/Lisbon';
  throw badInput(`--zone: "${zone}" is no time zone.\n  write:    --zone ${meant}`);
}

/** @throws Failure for bad input when too little of the log is left */
function untilOf(day: number | undefined, { from, until }: ReadLog): number | null {
  if (day === undefined) return null;
  const end = day + DAY;
  if (end - from >= FEWEST_WEEKS * 7 * DAY && day < until) return end;
  const dateOf = (time: number): string => new Date(time).toISOString().slice(0, 10);
  throw badInput(
    `--until: The log goes from ${dateOf(from)} to ${dateOf(until)}, and ${dateOf(day)} leaves less than ${FEWEST_WEEKS} weeks of it, or nothing out.\n  write:    --until ${dateOf(from + (2 * (until - from)) / 3)}`,
  );
}
