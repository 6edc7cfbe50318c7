import { Command } from 'commander';
import { checkOutput, REPORT_FILE, writeOutput } from '../files/output-file.ts';
import { reportPage } from '../files/report-page.ts';
import { readReportFile } from '../files/results-file.ts';

interface ReportOptions {
  readonly output?: string;
  readonly force: boolean;
}

export function reportCommand(): Command {
  return new Command('report')
    .summary('make a page of results, or of a decision')
    .description(
      'Makes one HTML page of what "buildweek run --json" or "buildweek decide --json" wrote. It opens from disk and needs nothing else; its reader can change the lab in it.',
    )
    .argument('<results>', 'results or decision (JSON); - reads standard input')
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
  const document = readReportFile(path);
  writeOutput(output, await reportPage(document));
  process.stdout.write(`The report is in ${output}. Open it in a browser.\n`);
}
