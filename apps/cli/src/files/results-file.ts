import {
  parseReportDocument,
  parseResults,
  type ReportDocument,
  type Results,
  ResultsError,
} from '@buildweek/results';
import { badInput } from '../failure.ts';
import { readText } from './read-file.ts';

/** @throws Failure for bad input when the file is no results document that this program reads */
export function readResultsFile(path: string): Results {
  return read(path, parseResults, 'Results are written by: buildweek run FILE --json RESULTS');
}

/** @throws Failure for bad input when the file is neither results nor a decision that this program reads */
export function readReportFile(path: string): ReportDocument {
  return read(
    path,
    parseReportDocument,
    'Results are written by: buildweek run FILE --json RESULTS\nA decision is written by: buildweek decide FILE --json DECISION',
  );
}

function read<Document>(path: string, parse: (text: string) => Document, hint: string): Document {
  const text = readText(path, 'results');
  try {
    return parse(text);
  } catch (error) {
    if (error instanceof ResultsError) throw badInput(`${path}: ${error.message}\n${hint}`);
    throw error;
  }
}
