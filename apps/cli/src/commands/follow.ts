import { MILLISECONDS_PER_WEEK } from '@buildweek/core';
import type { Results } from '@buildweek/results';
import {
  jobStoryOf,
  middleWeek,
  type Replay,
  replayOf,
  slowestJobs,
  watchedWeekOf,
  weekListingOf,
} from '@buildweek/study';
import { Argument, Command, Option } from 'commander';
import { badInput } from '../failure.ts';
import { checkOutput, type OutputKind, REPORT_FILE, writeOutput } from '../files/output-file.ts';
import { readResultsFile } from '../files/results-file.ts';
import { programVersion } from '../program-version.ts';
import { StoryClock } from '../tables/story-clock.ts';
import { storyDocument, storyHead, weekDocument } from '../tables/story-document.ts';
import { storyList } from '../tables/story-list.ts';
import { storyText } from '../tables/story-table.ts';
import { jobNumber } from '../tables/story-words.ts';
import { weekText } from '../tables/week-table.ts';
import { paragraph } from '../terminal/paragraph.ts';
import { harmless, styleFor } from '../terminal/style.ts';
import { wholeNumberOption } from './option-values.ts';

/** Jobs in the list that stands in for a job when none is named. */
const LISTED = 10;

const STORY_FILE: OutputKind = { name: 'a story', mark: /^\s*\{\s*"format":\s*"buildweek story"/ };

interface FollowOptions {
  readonly replication: number;
  readonly week?: number;
  readonly json?: string;
  readonly page?: string;
  readonly force: boolean;
}

export function followCommand(): Command {
  return new Command('follow')
    .summary('tell where a job was, what it waited for and how long')
    .description(
      'Plays one replication of the results again, with everything written down: the very jobs, machines and people that went into the results. Tells the story of one job, or lists the slowest jobs, or everything that happened in one week.',
    )
    .argument('<results>', 'results file (JSON) that "buildweek run --json" wrote; - reads standard input')
    .addArgument(
      new Argument('[job]', 'number of a job; without it the slowest jobs are listed').argParser(
        wholeNumberOption(1),
      ),
    )
    .option('--replication <number>', 'which replication, from 1', wholeNumberOption(1), 1)
    .addOption(
      new Option('--week <number>', 'list what machines and people do in this week, from 1').argParser(
        wholeNumberOption(1),
      ),
    )
    .option('--json <file>', 'write the story as JSON; - for standard output')
    .option(
      '--page <file>',
      'make a page of the week: every machine and person as a row, one job traced through',
    )
    .option('--force', 'overwrite a file that is not a story or a page', false)
    .addHelpText(
      'after',
      `
Examples:
  buildweek run scenarios/small.yaml --json small.json
  buildweek follow small.json                   the slowest jobs of the first replication
  buildweek follow small.json 42                the story of job 42
  buildweek follow small.json --week 3          what everybody did in the third week
  buildweek follow small.json --replication 7   another replication
  buildweek follow small.json 42 --page week.html        the week in which job 42 came, as a page
  buildweek follow small.json --week 3 --page week.html  the third week, its slowest job traced`,
    )
    .action(follow);
}

async function follow(path: string, job: number | undefined, options: FollowOptions): Promise<void> {
  const { week, json, page, force } = options;
  if (job !== undefined && week !== undefined && page === undefined) {
    throw badInput(
      'Name a job or a week, not both; with --page a job may be traced through another week than its own.',
    );
  }
  if (json !== undefined && json !== '-') checkOutput(json, STORY_FILE, force);
  if (page !== undefined) checkOutput(page, REPORT_FILE, force);
  const results = readResultsFile(path);
  const { replay, clock } = playAgain(results, path, options.replication);
  if (page !== undefined) {
    await writePage(page, results, replay, { path, job, week });
    return;
  }
  const told = tell(replay, clock, { path, job, week });
  const document = {
    format: 'buildweek story',
    version: 1,
    scenario: results.scenario.name,
    seed: results.run.seed,
    replication: options.replication,
    ...told.document,
  };
  const text = `${JSON.stringify(document, null, 1)}\n`;
  if (json === '-') {
    process.stdout.write(text);
    return;
  }
  if (json !== undefined) writeOutput(json, text);
  const style = styleFor(process.stdout);
  const { replications, seed } = results.run;
  const origin = `Replication ${options.replication} of ${replications}, seed "${seed}". Times are those on the wall of the lab; hours are by the clock.`;
  process.stdout.write(
    `${style.heading(harmless(results.scenario.name))}\n${paragraph(origin, '  ')}\n\n${told.text}\n`,
  );
}

/** Makes a page of the week that was named, of that in which the job came, or of the one in the middle. */
async function writePage(page: string, results: Results, replay: Replay, asked: Asked): Promise<void> {
  const { job } = asked;
  const story = job === undefined ? null : jobStoryOf(replay, job - 1);
  if (job !== undefined && story === null) throw badInput(noSuchJob(replay, job));
  const own = story === null ? middleWeek(replay.weeks) : weekOf(replay, story.arrivedAt);
  const week = knownWeek(replay, asked.week ?? own, asked.path);
  const { lab, run, scenario, program } = results;
  const watched = watchedWeekOf(replay, { name: scenario.name, lab, run }, week);
  // Charts take a while to load: the other commands do without.
  const { renderWeek } = await import('@buildweek/report');
  writeOutput(page, renderWeek(watched, job ?? null, program.version));
  process.stdout.write(`The page of week ${week} is in ${page}. Open it in a browser.\n`);
}

/** The measured week in which a moment lies, or the nearest. */
function weekOf(replay: Replay, time: number): number {
  const week = Math.floor(replay.localTime.toLocal(time) / MILLISECONDS_PER_WEEK) + 1;
  return Math.min(replay.weeks, Math.max(1, week));
}

/** @throws Failure for bad input when the plan has no such week */
function knownWeek(replay: Replay, week: number, path: string): number {
  if (week <= replay.weeks) return week;
  throw badInput(
    `There is no week ${week} in ${path}: its measured weeks are numbered 1 to ${replay.weeks}.`,
  );
}

/** @throws Failure for bad input when the results are another program's, or have no such replication */
function playAgain(
  results: Results,
  path: string,
  replication: number,
): { readonly replay: Replay; readonly clock: StoryClock } {
  const { lab, run, program } = results;
  if (program.version !== programVersion()) {
    throw badInput(
      `${path} was written by buildweek ${program.version}; this is buildweek ${programVersion()}, which may play the same lab otherwise. Run the scenario again, or follow the job with the program that wrote the results.`,
    );
  }
  if (replication > run.replications) {
    throw badInput(
      `There is no replication ${replication} in ${path}: its replications are numbered 1 to ${run.replications}.`,
    );
  }
  try {
    const replay = replayOf(lab, run, replication - 1);
    return { replay, clock: new StoryClock(lab.startDate, replay.localTime) };
  } catch (error) {
    // A run wrote these results, so the lab could be played once.
    const reason = error instanceof Error ? error.message : String(error);
    throw badInput(`The lab in ${path} is damaged: ${reason}\nRun its scenario again.`);
  }
}

interface Asked {
  readonly path: string;
  readonly job: number | undefined;
  readonly week: number | undefined;
}

interface Told {
  readonly text: string;
  readonly document: Record<string, unknown>;
}

function tell(replay: Replay, clock: StoryClock, { path, job, week }: Asked): Told {
  const style = styleFor(process.stdout);
  const replication = replay.replication + 1;
  if (week !== undefined) {
    const listing = weekListingOf(replay, knownWeek(replay, week, path));
    const title = style.heading(`Week ${week} of ${replay.weeks}`);
    return {
      text: `${title}\n\n${weekText(listing, clock, style)}`,
      document: { kind: 'week', ...weekDocument(listing, clock) },
    };
  }
  if (job !== undefined) {
    const story = jobStoryOf(replay, job - 1);
    if (story === null) throw badInput(noSuchJob(replay, job));
    return {
      text: storyText(story, clock, style),
      document: { kind: 'job', ...storyDocument(story, clock) },
    };
  }
  const stories = slowestJobs(replay, LISTED);
  const [first] = stories;
  const command = `buildweek follow ${quoted(path)} ${first === undefined ? 'JOB' : jobNumber(first.job)}`;
  const next = `Follow one of them with: ${command}${replication === 1 ? '' : ` --replication ${replication}`}`;
  const list = first === undefined ? '  No job arrived.' : storyList(stories, clock, style);
  return {
    text: `${style.heading('The slowest jobs that arrived in the measured weeks')}\n${list}\n\n${next}`,
    document: { kind: 'slowest jobs', jobs: stories.map((story) => storyHead(story, clock)) },
  };
}

function noSuchJob(replay: Replay, job: number): string {
  const last = replay.entries.reduce((most, entry) => Math.max(most, entry.job), -1);
  const known = last < 0 ? 'no job arrived in it' : `its jobs are numbered 1 to ${jobNumber(last)}`;
  return `There is no job ${job} in replication ${replay.replication + 1}: ${known}.`;
}

/** A path as a shell takes it for one word. */
function quoted(path: string): string {
  return /^[\w./-]+$/.test(path) ? path : `'${path.replaceAll("'", "'\\''")}'`;
}
