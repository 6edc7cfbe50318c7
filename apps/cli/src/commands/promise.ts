import { FINISHES, type Finish } from '@buildweek/scenario';
import { Command, Option } from 'commander';
import { badInput } from '../failure.ts';
import {
  CALENDAR_FILE,
  checkOutput,
  PROMISE_FILE,
  PROMISE_TABLE_FILE,
  REPORT_FILE,
  writeOutput,
} from '../files/output-file.ts';
import { readScenarioFile } from '../files/scenario-file.ts';
import { tellWarnings } from '../plans/plan-answer.ts';
import type { RequestOptions } from '../promise/asked-request.ts';
import { promiseAnswer } from '../promise/promise-answer.ts';
import { promiseCalendar } from '../promise/promise-calendar.ts';
import { promiseCsv } from '../promise/promise-csv.ts';
import { labToday } from '../records/lab-today.ts';
import { promiseText } from '../tables/promise-text.ts';
import { styleFor } from '../terminal/style.ts';
import { type ChangesOptions, withChangesOption } from './changes-option.ts';
import { gathered, wholeNumberOption } from './option-values.ts';
import { type TodayCommandOptions, withTodayOptions } from './today-options.ts';

interface PromiseOptions extends ChangesOptions, TodayCommandOptions {
  readonly part?: string;
  readonly mesh?: string;
  readonly unit?: RequestOptions['unit'];
  readonly asGiven: boolean;
  readonly size?: string;
  readonly volume?: string;
  readonly surface?: string;
  readonly quantity: number;
  readonly finish?: Finish;
  readonly material?: string;
  readonly route?: string;
  readonly rush: boolean;
  readonly replications: number;
  readonly weeks: number;
  readonly seed?: string;
  readonly workers?: number;
  readonly all: boolean;
  readonly pin: readonly string[];
  readonly since?: string;
  readonly json?: string;
  readonly page?: string;
  readonly csv?: string;
  readonly calendar?: string;
  readonly force: boolean;
}

/** With 199 plays the order statistics hold 50, 80, 90 and 95 % exactly. */
const USUAL_REPLICATIONS = 199;
const FEWEST_REPLICATIONS = 20;
/** The longer it looks ahead, the longer it takes. */
const USUAL_WEEKS = 4;

export function promiseCommand(): Command {
  const command = new Command('promise')
    .summary('say when a new request will be ready, from the state of the lab today')
    .description(
      'Plays the lab on from the state in which it stands, many times, with a new request in it: the date to promise at 50, 80, 90 and 95 %, by every process that can make it and sent out; what moves it; and what taking it on does to the jobs that are there already. What stands in the lab is written under "at the start" of the scenario.',
    )
    .argument('<file>', 'scenario file (YAML); - reads standard input')
    .option('--part <name>', 'a part of the scenario')
    .option('--mesh <file>', 'or a new one: an STL or 3MF file')
    .addOption(
      new Option('--unit <unit>', 'unit of an STL file (default: mm)').choices([
        'micron',
        'mm',
        'cm',
        'm',
        'inch',
        'foot',
      ]),
    )
    .option('--as-given', 'build the mesh as it stands in the file, not as suits each process best', false)
    .option('--size <text>', 'or a new one by its size, as "60 x 40 x 30 mm"')
    .option('--volume <text>', 'volume of the part, as "18 cm3", with --size')
    .option('--surface <text>', 'surface of the part, as "95 cm2", with --size (default: estimated)')
    .option('--quantity <number>', 'how many pieces', wholeNumberOption(1), 1)
    .addOption(
      new Option('--finish <finish>', 'how it is to be finished (default: as the scenario says)').choices([
        ...FINISHES,
      ]),
    )
    .option(
      '--pin <build>',
      'decide on a build, as "resin 2: job 12, job 15 at 15:00", and see what follows, with --all; may be given again',
      gathered,
      [] as readonly string[],
    )
    .option(
      '--since <document>',
      'the answer of the day before (JSON), to say which dates have moved and why, with --all',
    )
    .option('--material <name>', 'what it is made of (default: as the scenario says)')
    .option('--route <name>', 'only by this route (default: by each that can make it)')
    .option('--rush', 'as a rush job', false)
    .option(
      '--all',
      'answer for every job that stands in the lab, and say what to start before it closes',
      false,
    )
    .option(
      '--replications <number>',
      `plays of what is to come, at least ${FEWEST_REPLICATIONS}; 199 hold all four chances exactly`,
      wholeNumberOption(FEWEST_REPLICATIONS),
      USUAL_REPLICATIONS,
    )
    .option(
      '--weeks <number>',
      'look so many weeks ahead, this one included; what is not finished then is later than everything',
      wholeNumberOption(2),
      USUAL_WEEKS,
    )
    .option('--seed <text>', 'random numbers to play with; the same seed gives the same answer')
    .option(
      '--workers <number>',
      'threads to play on; the answer does not depend on it (default: one for each core)',
      wholeNumberOption(1),
    )
    .option('--json <file>', 'write the answer as JSON; - for standard output')
    .option('--page <file>', 'write the answer as one HTML page')
    .option('--csv <file>', 'write the dates as a table for spreadsheets')
    .option(
      '--calendar <file>',
      'write the dates, and the builds to start, as a calendar (iCalendar, RFC 5545)',
    )
    .option('--force', 'overwrite files that this command did not write', false);
  return withTodayOptions(withChangesOption(command))
    .addHelpText(
      'after',
      `
Examples:
  buildweek promise scenarios/demo.yaml --part bracket --quantity 20
  buildweek promise scenarios/demo.yaml --part bracket --log scenarios/demo-log.csv --machines scenarios/demo-machines.csv
  buildweek promise today.yaml --all --csv today.csv --calendar today.ics
  buildweek promise today.yaml --all --since yesterday.json --json today.json
  buildweek promise today.yaml --all --pin "resin 2: job 3, job 8 at 15:00"
  buildweek promise scenarios/demo.yaml --mesh scenarios/parts/bracket.stl --quantity 4 --finish smooth --rush`,
    )
    .action(promise);
}

async function promise(path: string, options: PromiseOptions): Promise<void> {
  const { json, page, csv, calendar, force } = options;
  if (json !== undefined && json !== '-') checkOutput(json, PROMISE_FILE, force);
  if (page !== undefined) checkOutput(page, REPORT_FILE, force);
  if (csv !== undefined) checkOutput(csv, PROMISE_TABLE_FILE, force);
  if (calendar !== undefined) checkOutput(calendar, CALENDAR_FILE, force);
  const request = requestOf(options);
  const { file, told } = await labToday(readScenarioFile(path, options.with), path, options);
  for (const sentence of told) process.stderr.write(`${sentence}\n`);
  tellWarnings(file);
  const { scenario, settings } = file.reading;
  const answer = await promiseAnswer(file, {
    path,
    request,
    all: options.all,
    pins: options.pin,
    since: options.since ?? null,
    run: {
      seed: options.seed ?? settings.seed,
      replications: options.replications,
      lastWeeks: options.weeks,
    },
    workers: options.workers,
  });
  const document = `${JSON.stringify(answer, null, 1)}\n`;
  if (json === '-') process.stdout.write(document);
  else if (json !== undefined) writeOutput(json, document);
  if (csv !== undefined) writeOutput(csv, promiseCsv(answer));
  if (calendar !== undefined) writeOutput(calendar, promiseCalendar(answer, scenario.zone));
  if (page !== undefined) {
    // Charts take a while to load: without a page the command does without.
    const { renderPromise } = await import('@buildweek/report');
    writeOutput(page, renderPromise(answer));
    process.stderr.write(`The page is in ${page}. Open it in a browser.\n`);
  }
  if (json !== '-') process.stdout.write(promiseText(answer, styleFor(process.stdout)));
}

/** @returns null when nothing new is asked for */
function requestOf(options: PromiseOptions): RequestOptions | null {
  const { part, mesh, size, volume, surface, unit } = options;
  const given = [part, mesh, size].filter((one) => one !== undefined).length;
  if (given === 0 && options.all) return null;
  if (given !== 1) {
    throw badInput(
      given === 0
        ? 'What is asked for? Give --part NAME for a part of the scenario, --mesh FILE, or --size and --volume; or --all for the jobs that stand in the lab.'
        : 'Give one of --part, --mesh and --size: a part of the scenario, a mesh, or a size with its volume.',
    );
  }
  if (size !== undefined && volume === undefined) {
    throw badInput('A size needs a volume beside it: --size "60 x 40 x 30 mm" --volume "18 cm3"');
  }
  if (size === undefined && (volume !== undefined || surface !== undefined)) {
    throw badInput('--volume and --surface go with --size; a mesh or a part of the scenario has its own.');
  }
  if (mesh === undefined && unit !== undefined) throw badInput('--unit is for a mesh.');
  return {
    part: part ?? null,
    mesh: mesh ?? null,
    unit: unit ?? null,
    orientation: options.asGiven ? 'as given' : 'best',
    typed:
      size === undefined || volume === undefined
        ? null
        : { size, volume, ...(surface === undefined ? {} : { surface }) },
    finish: options.finish ?? null,
    material: options.material ?? null,
    route: options.route ?? null,
    quantity: options.quantity,
    rush: options.rush,
  };
}
