import {
  type BusyMachine,
  type CivilTime,
  logUntil,
  type OpenJob,
  openJobs,
  runsUntil,
} from '@buildweek/records';
import { type ChangeWording, formatProblem } from '@buildweek/scenario';
import { badInput } from '../failure.ts';
import { readText } from '../files/read-file.ts';
import { readChangedScenario, readingOf, type ScenarioFile } from '../files/scenario-file.ts';
import { readLog } from './read-log.ts';

/** Where the state of the lab is told. */
export interface TodayOptions {
  /** The open rows of a log. */
  readonly log?: string;
  readonly machines?: string;
  readonly mapping?: string;
  readonly backlog?: string;
  /** As it was typed: `2027-05-12 09:30`. */
  readonly now?: string;
}

/** A scenario that starts from today. */
export interface LabToday {
  readonly file: ScenarioFile;
  /** What stands in the lab, and what could not be told: whole sentences. */
  readonly told: readonly string[];
}

const DAY = 86_400_000;
const MINUTE = 60_000;
/** 1970-01-01 was a Thursday; weeks begin on Monday. */
const MONDAY = 4 * DAY;

/**
 * The scenario with the state of the lab in the place of what it says itself: from a backlog file, or from the open rows
 * of the lab's own log; as it is when neither is given.
 *
 * @throws Failure for bad input with the file, the place and how to mend it
 */
export async function labToday(file: ScenarioFile, path: string, options: TodayOptions): Promise<LabToday> {
  const { log, backlog, now } = options;
  if (log !== undefined && backlog !== undefined) {
    throw badInput('Give --log or --backlog, not both: each says what stands in the lab.');
  }
  if (log !== undefined) return fromLog(file, path, log, options);
  if (backlog !== undefined) return { file: fromBacklog(file, path, backlog), told: [] };
  if (now !== undefined) throw badInput('--now goes with --log: it says up to when the log is read.');
  return { file, told: [] };
}

async function fromLog(
  file: ScenarioFile,
  path: string,
  logPath: string,
  { machines, mapping, now: asked }: TodayOptions,
): Promise<LabToday> {
  const { lab, scenario } = file.reading;
  const typed = asked === undefined ? null : momentOf(asked);
  const log = await readLog(logPath, {
    zone: scenario.zone,
    knownParts: lab.demand.map(({ name }) => name),
    ...(machines === undefined ? {} : { machines }),
    ...(mapping === undefined ? {} : { mapping }),
  });
  const now = typed ?? log.until;
  const state = openJobs(logUntil(log, now).jobs, runsUntil(log.runs, now), lab, now);
  const changes: ChangeWording[] = [
    {
      wording: `at the start: the open rows of ${logPath}`,
      path: ['at the start'],
      value: stateText(state.jobs, state.machines, now),
    },
  ];
  // The plan begins with the week of today when it would begin later.
  if (now < Date.parse(`${lab.startDate}T00:00Z`)) {
    const monday = Math.floor((now - MONDAY) / (7 * DAY)) * 7 * DAY + MONDAY;
    changes.push({ wording: 'starts', path: ['starts'], value: dateText(monday) });
  }
  return {
    file: readChangedScenario(file, path, changes),
    told: [
      `Now is ${momentText(now)}, by ${typed === null ? 'the last row of the log' : '--now'}.`,
      ...state.told,
    ],
  };
}

/** One line of YAML: everything that stands in the lab. */
function stateText(jobs: readonly OpenJob[], machines: readonly BusyMachine[], now: CivilTime): string {
  const jobTexts = jobs.map(({ name, demand, pieces, stage, machine, arrived, due, rush }) => {
    const entries = [
      ...(name === null ? [] : [`name: ${quoted(name)}`]),
      `demand: ${quoted(demand)}`,
      `pieces: ${pieces}`,
      `stage: ${quoted(stage)}`,
      ...(machine === null ? [] : [`in: ${quoted(machine)}`]),
      `arrived: ${momentText(Math.min(arrived, now))}`,
      ...(due === null ? [] : [`due: ${momentText(due)}`]),
      ...(rush ? ['rush: yes'] : []),
    ];
    return `{ ${entries.join(', ')} }`;
  });
  const machineTexts = machines.map(
    ({ machine, busyUntil }) => `${quoted(machine)}: { busy until: ${momentText(busyUntil)} }`,
  );
  const parts = [
    `now: ${momentText(now)}`,
    ...(jobTexts.length === 0 ? [] : [`jobs: [ ${jobTexts.join(', ')} ]`]),
    ...(machineTexts.length === 0 ? [] : [`machines: { ${machineTexts.join(', ')} }`]),
  ];
  return `{ ${parts.join(', ')} }`;
}

/** A name in YAML, whatever is in it. */
function quoted(name: string): string {
  return JSON.stringify(name);
}

/**
 * A backlog file is the section "at the start" in a file of its own; mistakes in it are told with its own name and lines.
 */
function fromBacklog({ text }: ScenarioFile, path: string, backlogPath: string): ScenarioFile {
  const section = readText(backlogPath, 'backlog').replace(/\r\n?/g, '\n');
  const hasHead = /^at the start:\s*(?:#.*)?$/m.test(section);
  const lines = section.split('\n');
  const block = hasHead ? lines : ['at the start:', ...lines.map((line) => (line === '' ? '' : `  ${line}`))];
  const base = withoutSection(text, 'at the start').replace(/\n*$/, '\n');
  const above = base.split('\n').length - 1;
  const reading = readingOf(`${base}${block.join('\n')}\n`, path, ` with ${backlogPath}`);
  if (reading.kind === 'scenario') return { text: `${base}${block.join('\n')}\n`, reading };
  const problems = reading.problems.map((problem) =>
    problem.line <= above
      ? problem
      : {
          ...problem,
          file: backlogPath,
          line: Math.max(1, problem.line - above - (hasHead ? 0 : 1)),
          column: Math.max(1, problem.column - (hasHead ? 0 : 2)),
          sourceLine: hasHead ? problem.sourceLine : problem.sourceLine.replace(/^ {2}/, ''),
        },
  );
  throw badInput(`${problems.map(formatProblem).join('\n\n')}\n\nNothing was done.`);
}

/** The text without one of its sections; what stands above and below stays. */
function withoutSection(text: string, section: string): string {
  const kept: string[] = [];
  let isInside = false;
  for (const line of text.split('\n')) {
    if (/^\S/.test(line) && !line.startsWith('#')) isInside = line.startsWith(`${section}:`);
    if (!isInside) kept.push(line);
  }
  return kept.join('\n');
}

/** @throws Failure for bad input when it is no date with a time */
function momentOf(text: string): CivilTime {
  const match = /^(\d{4}-\d{2}-\d{2})[ T](\d{1,2}):(\d{2})$/.exec(text.trim());
  const time =
    match === null ? Number.NaN : Date.parse(`${match[1]}T${(match[2] ?? '').padStart(2, '0')}:${match[3]}Z`);
  if (!Number.isNaN(time)) return time;
  throw badInput(`--now is no moment: "${text}". Write it as "2027-05-12 09:30", by the clock of the lab.`);
}

function dateText(time: CivilTime): string {
  return new Date(time).toISOString().slice(0, 10);
}

function momentText(time: CivilTime): string {
  const shown = new Date(Math.floor(time / MINUTE) * MINUTE).toISOString();
  return `${shown.slice(0, 10)} ${shown.slice(11, 16)}`;
}
