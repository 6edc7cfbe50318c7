import type { Results, WatchedWeek } from '@buildweek/results';
import { middleWeek, replayOf, watchedWeekOf } from '@buildweek/study';
import { Command } from 'commander';
import { checkOutput, REPORT_FILE, writeOutput } from '../files/output-file.ts';
import { readResultsFile } from '../files/results-file.ts';
import { programVersion } from '../program-version.ts';

interface ReportOptions {
  readonly output?: string;
  readonly force: boolean;
}

export function reportCommand(): Command {
  return new Command('report')
    .summary('make a page of results')
    .description(
      'Makes one HTML page of the results that "buildweek run --json" wrote. It opens from disk and needs nothing else.',
    )
    .argument('<results>', 'results file (JSON); - reads standard input')
    .option('--output <file>', 'page to write (default: beside the results, with the ending .html)')
    .option('--force', 'overwrite a file that is not a report', false)
    .addHelpText(
      'after',
      '\nExamples:\n  buildweek report demo.json\n  buildweek report demo.json --output "spring quarter.html"',
    )
    .action(report);
}

async function report(path: string, options: ReportOptions): Promise<void> {
  const output = options.output ?? (path === '-' ? 'report.html' : `${path.replace(/\.json$/i, '')}.html`);
  checkOutput(output, REPORT_FILE, options.force);
  const results = readResultsFile(path);
  // Charts take a while to load: the other commands do without.
  const { renderReport } = await import('@buildweek/report');
  writeOutput(output, renderReport(results, typicalWeek(results)));
  process.stdout.write(`The report is in ${output}. Open it in a browser.\n`);
}

/** The week in the middle of the first replication; null when another version of the program played it otherwise. */
function typicalWeek({ lab, run, scenario, program }: Results): WatchedWeek | null {
  if (program.version !== programVersion()) return null;
  const watched = { name: scenario.name, lab, run };
  return watchedWeekOf(replayOf(lab, run, 0), watched, middleWeek(run.weeks));
}
