import type { Command } from 'commander';
import { badInput } from '../failure.ts';
import { checkOutput, type OutputKind } from '../files/output-file.ts';
import { checkFolder } from './chart-folder.ts';

/** The options of all commands that write files for the office. */
export interface OfficeOptions {
  readonly pdf?: string;
  readonly slides?: string;
  readonly charts?: string;
  readonly table?: string;
  readonly force: boolean;
}

const PDF_FILE: OutputKind = { name: 'a PDF', mark: /<pdf:Producer>buildweek /, inAll: true };
const SLIDES_FILE: OutputKind = {
  name: 'a set of slides',
  mark: /^PK[\s\S]*<Application>buildweek slides</,
};
const WORKBOOK_FILE: OutputKind = { name: 'a table', mark: /^PK[\s\S]*<Application>buildweek table</ };
const CSV_FILE: OutputKind = { name: 'a table', mark: /^section,subject,measure,value,unit,low,high,/ };

/** Adds them to a command. */
export function withOfficeOptions(command: Command): Command {
  return command
    .option('--pdf <file>', 'write the report as PDF, A4')
    .option('--slides <file>', 'write slides for a meeting (.pptx)')
    .option(
      '--charts <folder>',
      'write every chart as drawing (.svg), picture (.png) and vega-lite specification (.vl.json)',
    )
    .option('--table <file>', 'write every number as a table: .csv, or .xlsx with a sheet for each section');
}

/** Whether any file for the office is asked for. */
export function asksForOffice({ pdf, slides, charts, table }: OfficeOptions): boolean {
  return [pdf, slides, charts, table].some((one) => one !== undefined);
}

/** Whether a table is to be a workbook. @throws Failure for bad input when its name says neither kind */
export function isWorkbook(path: string): boolean {
  if (/\.xlsx$/i.test(path)) return true;
  if (/\.csv$/i.test(path)) return false;
  throw badInput(
    `--table ${path}: the name does not say which kind of table it is to be. End it with .csv or .xlsx.`,
  );
}

/** Makes sure, before any work is done, that the files may be written. @throws Failure for bad input */
export function checkOffice({ pdf, slides, charts, table, force }: OfficeOptions): void {
  if (pdf !== undefined) checkOutput(named(pdf, '--pdf', '.pdf'), PDF_FILE, force);
  if (slides !== undefined) checkOutput(named(slides, '--slides', '.pptx'), SLIDES_FILE, force);
  if (charts !== undefined) checkFolder(charts);
  if (table !== undefined) checkOutput(table, isWorkbook(table) ? WORKBOOK_FILE : CSV_FILE, force);
}

/** Programs of the office open a file by the ending of its name. */
function named(path: string, option: string, ending: string): string {
  if (path.toLowerCase().endsWith(ending)) return path;
  throw badInput(`${option} ${path}: programs know such a file by its name. End it with ${ending}.`);
}
