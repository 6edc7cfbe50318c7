import { Command } from 'commander';
import { checkOutput, REPORT_FILE, writeOutput } from '../files/output-file.ts';
import { reportPage } from '../files/report-page.ts';
import { readReportFile } from '../files/results-file.ts';
import {
  asksForOffice,
  checkOffice,
  type OfficeOptions,
  withOfficeOptions,
} from '../office/office-options.ts';
import { writeOffice } from '../office/write-office.ts';

interface ReportOptions extends OfficeOptions {
  readonly output?: string;
}

export function reportCommand(): Command {
  const command = new Command('report')
    .summary('make a page, a PDF, slides or a table of results, or of a decision')
    .description(
      'Makes one HTML page of what "buildweek run --json" or "buildweek decide --json" wrote. It opens from disk and needs nothing else; its reader can change the lab in it. With --pdf, --slides, --charts or --table it writes those, and the page only where --output names it.',
    )
    .argument('<results>', 'results or decision (JSON); - reads standard input')
    .option('--output <file>', 'page to write (default: beside the results, with the ending .html)')
    .option('--force', 'overwrite files that this command did not write', false);
  return withOfficeOptions(command)
    .addHelpText(
      'after',
      `
Examples:
  buildweek report demo.json
  buildweek report demo.json --output "spring quarter.html"
  buildweek report demo.json --pdf demo.pdf --slides demo.pptx
  buildweek report demo.json --table demo.xlsx --charts charts`,
    )
    .action(report);
}

async function report(path: string, options: ReportOptions): Promise<void> {
  const output =
    options.output ??
    (asksForOffice(options) ? null : path === '-' ? 'report.html' : `${path.replace(/\.json$/i, '')}.html`);
  if (output !== null) checkOutput(output, REPORT_FILE, options.force);
  checkOffice(options);
  const document = readReportFile(path);
  if (output !== null) {
    writeOutput(output, await reportPage(document));
    process.stdout.write(`The report is in ${output}. Open it in a browser.\n`);
  }
  await writeOffice(document, options);
}
