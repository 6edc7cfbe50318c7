import { isZone, nearest, zoneNames } from '@buildweek/scenario';
import { Command } from 'commander';
import { badInput } from '../failure.ts';
import { checkOutput, MAPPING_FILE, writeOutput } from '../files/output-file.ts';
import { mappingText } from '../records/mapping-text.ts';
import { readLog } from '../records/read-log.ts';
import { logText } from '../tables/log-text.ts';
import { styleFor } from '../terminal/style.ts';

interface FromLogOptions {
  readonly machines?: string;
  readonly mapping?: string;
  readonly mappingOut?: string;
  readonly zone?: string;
  readonly keepRequesters: boolean;
  readonly force: boolean;
}

export function fromLogCommand(): Command {
  return new Command('from-log')
    .summary("learn the demand from the lab's own list of requests")
    .description(
      'Reads a table of past requests in whatever columns and date formats the lab has, and says what was understood of it and what is wrong with its rows.',
    )
    .argument('<log>', 'table of requests (CSV)')
    .option('--machines <file>', 'records of machines (CSV): machine, start, end, outcome of each run')
    .option('--mapping <file>', 'what the columns are (YAML), where the guess is wrong')
    .option('--mapping-out <file>', 'write down what was guessed, ready to be corrected')
    .option('--zone <zone>', 'zone of the lab, such as Europe/Lisbon')
    .option('--keep-requesters', 'keep the names of who asked', false)
    .option('--force', 'overwrite files that this command did not write', false)
    .addHelpText(
      'after',
      `
Columns are found by their headings, in several languages, and by what is in them. Where that
goes wrong, write down the guess, correct it, and hand it in:
  buildweek from-log requests.csv --mapping-out requests.yaml
  buildweek from-log requests.csv --mapping requests.yaml`,
    )
    .action(fromLog);
}

async function fromLog(path: string, options: FromLogOptions): Promise<void> {
  const { mappingOut, force } = options;
  checkZone(options.zone);
  if (mappingOut !== undefined) checkOutput(mappingOut, MAPPING_FILE, force);
  const log = await readLog(path, {
    machines: options.machines,
    mapping: options.mapping,
    zone: options.zone,
    keepsRequesters: options.keepRequesters,
  });
  if (mappingOut !== undefined) writeOutput(mappingOut, mappingText(log));
  process.stdout.write(logText(log, styleFor(process.stdout)));
}

function checkZone(zone: string | undefined): void {
  if (zone === undefined || isZone(zone)) return;
  const meant = nearest(zone, zoneNames()) ?? 'Europe/Lisbon';
  throw badInput(`--zone: "${zone}" is no time zone.\n  write:    --zone ${meant}`);
}
