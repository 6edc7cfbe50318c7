import { parseResults, type Results, ResultsError } from '@buildweek/results';
import { badInput } from '../failure.ts';
import { readText } from './read-file.ts';

/** @throws Failure for bad input when the file is no results document that this program reads */
export function readResultsFile(path: string): Results {
  const text = readText(path, 'results');
  try {
    return parseResults(text);
  } catch (error) {
    if (error instanceof ResultsError) {
      throw badInput(`${path}: ${error.message}\nResults are written by: buildweek run FILE --json RESULTS`);
    }
    throw error;
  }
}
