import { dirname, resolve } from 'node:path';
import type { PartAnswer } from '@buildweek/results';
import { FINISHES, type Finish } from '@buildweek/scenario';
import { Command, Option } from 'commander';
import { badInput } from '../failure.ts';
import { checkOutput, PART_FILE, REPORT_FILE, writeOutput } from '../files/output-file.ts';
import { answerForPart, type PartRequest } from '../part/answer-for-part.ts';
import { partText } from '../tables/part-text.ts';
import { styleFor } from '../terminal/style.ts';
import { quantitiesOption, wholeNumberOption } from './option-values.ts';

interface PartOptions {
  readonly in?: string;
  readonly size?: string;
  readonly volume?: string;
  readonly surface?: string;
  readonly supportedVolume?: string;
  readonly supportContact?: string;
  readonly unit?: PartRequest['unit'];
  readonly asGiven: boolean;
  readonly finish: Finish;
  readonly quantities: readonly number[];
  readonly plays: number;
  readonly seed: string;
  readonly json?: string;
  readonly page?: string;
  readonly force: boolean;
}

export function partCommand(): Command {
  return new Command('part')
    .summary('say which process to take for a part, for one piece and for many')
    .description(
      'Takes a mesh, or a size and a volume, through every process of a lab: how long until it is finished, what of that is printing, how much work it is for people, and from how many pieces on another process is ahead. The lab is empty and nothing goes wrong, so the times are the least that can be.',
    )
    .argument('[mesh]', 'STL or 3MF file; or leave it out and give --size and --volume')
    .option('--in <scenario>', 'lab to make it in (default: one machine of every typical class)')
    .option('--size <text>', 'width x depth x height as it stands in a build, as "60 x 40 x 30 mm"')
    .option('--volume <text>', 'volume of the part, as "18 cm3"')
    .option('--surface <text>', 'surface of the part, as "95 cm2" (default: estimated)')
    .option('--supported-volume <text>', 'volume below overhangs, as "800 mm3" (default: estimated)')
    .option('--support-contact <text>', 'area that supports touch, as "120 mm2" (default: estimated)')
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
    .option(
      '--as-given',
      'build it as it stands in the file or was typed, not as suits each process best',
      false,
    )
    .addOption(
      new Option('--finish <finish>', 'how it is to be finished').choices([...FINISHES]).default('cleaned'),
    )
    .option('--quantities <list>', 'numbers of pieces', quantitiesOption, [1, 5, 20, 100])
    .option('--plays <number>', 'plays behind every spread, at least 20', wholeNumberOption(20), 40)
    .option('--seed <text>', 'random numbers to play with', 'buildweek')
    .option('--json <file>', 'write the answer as JSON; - for standard output')
    .option('--page <file>', 'write the answer as one HTML page')
    .option('--force', 'overwrite files that this command did not write', false)
    .addHelpText(
      'after',
      `
Examples:
  buildweek part scenarios/parts/bracket.stl
  buildweek part scenarios/parts/bracket.stl --in scenarios/demo.yaml --page bracket.html
  buildweek part --size "60 x 40 x 30 mm" --volume "18 cm3" --finish smooth`,
    )
    .action(part);
}

async function part(mesh: string | undefined, options: PartOptions): Promise<void> {
  const toStandardOutput = options.json === '-';
  if (options.json !== undefined && !toStandardOutput) checkOutput(options.json, PART_FILE, options.force);
  if (options.page !== undefined) checkOutput(options.page, REPORT_FILE, options.force);
  const answer = answerForPart(requestOf(mesh, options), process.stderr);
  await keep(answer, options);
  if (!toStandardOutput) process.stdout.write(partText(answer, styleFor(process.stdout)));
}

function requestOf(mesh: string | undefined, options: PartOptions): PartRequest {
  const { size, volume, surface, supportedVolume, supportContact } = options;
  const typed = { size, volume, surface, supportedVolume, supportContact };
  if (mesh !== undefined && Object.values(typed).some((text) => text !== undefined)) {
    throw badInput('A mesh says its size itself: give the mesh alone, or --size and --volume without it.');
  }
  if (mesh === undefined && (size === undefined || volume === undefined)) {
    throw badInput(
      'Which part? Give an STL or 3MF file, or its size and volume: buildweek part --size "60 x 40 x 30 mm" --volume "18 cm3"',
    );
  }
  if (mesh === undefined && options.unit !== undefined) {
    throw badInput('--unit is for a mesh; a size says its unit itself.');
  }
  return {
    scenario: options.in ?? null,
    mesh: mesh ?? null,
    unit: options.unit ?? null,
    orientation: options.asGiven ? 'as given' : 'best',
    typed:
      size === undefined || volume === undefined
        ? null
        : {
            size,
            volume,
            ...(surface === undefined ? {} : { surface }),
            ...(supportedVolume === undefined ? {} : { supportedVolume }),
            ...(supportContact === undefined ? {} : { supportContact }),
          },
    finish: options.finish,
    quantities: options.quantities,
    plays: options.plays,
    seed: options.seed,
    folder: options.in === undefined || options.in === '-' ? '.' : dirname(resolve(options.in)),
  };
}

async function keep(answer: PartAnswer, { json, page }: PartOptions): Promise<void> {
  const text = `${JSON.stringify(answer, null, 1)}\n`;
  if (json === '-') process.stdout.write(text);
  else if (json !== undefined) writeOutput(json, text);
  if (page === undefined) return;
  // Charts take a while to load: without a page the command does without.
  const { renderPart } = await import('@buildweek/report');
  writeOutput(page, renderPart(answer));
  process.stderr.write(`The page is in ${page}. Open it in a browser.\n`);
}
