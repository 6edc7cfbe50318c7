import type { ReportDocument } from '@buildweek/results';
import { writeOutput } from '../files/output-file.ts';
import { writeCharts } from './chart-folder.ts';
import { asksForOffice, isWorkbook, type OfficeOptions } from './office-options.ts';

/**
 * Writes the files for the office that are asked for, and says where each is.
 * @throws Failure for bad input when something else stands there
 */
export async function writeOffice(document: ReportDocument, options: OfficeOptions): Promise<void> {
  if (!asksForOffice(options)) return;
  const { pdf, slides, charts, table, force } = options;
  // What draws and packs takes a while to load: the other commands do without.
  const office = await import('@buildweek/report/office');
  if (pdf !== undefined) tell(pdf, 'PDF', await office.pdfOf(document));
  if (slides !== undefined) tell(slides, 'slides', await office.slidesOf(document));
  if (table !== undefined) {
    tell(table, 'table', isWorkbook(table) ? await office.workbookOf(document) : office.csvOf(document));
  }
  if (charts !== undefined) {
    const files = office.chartFilesOf(document);
    writeCharts(charts, files, office.CHART_INDEX, force);
    process.stderr.write(`The charts are in ${charts}, ${office.CHART_INDEX} lists them.\n`);
  }
}

function tell(path: string, what: string, content: string | Uint8Array): void {
  writeOutput(path, content);
  process.stderr.write(`The ${what} ${what === 'slides' ? 'are' : 'is'} in ${path}.\n`);
}
