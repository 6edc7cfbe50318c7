import { RESULTS_VERSION, type Results, resultsSchema } from './results.ts';

/** A text that is no results document of this version; the message says why, and what to do. */
export class ResultsError extends Error {}

/**
 * Reads a results document.
 * @param text the whole document
 * @throws ResultsError when it is damaged, something else, or of another version
 */
export function parseResults(text: string): Results {
  const document = parseJson(text);
  if (!isObject(document) || document.format !== 'buildweek results') {
    throw new ResultsError(
      'This is not a results document: it does not begin with "format": "buildweek results".',
    );
  }
  if (document.version !== RESULTS_VERSION) {
    const found = JSON.stringify(document.version) ?? 'none';
    throw new ResultsError(
      `This results document has version ${found}; this program reads version ${RESULTS_VERSION}. Run its scenario again with this program, or open it with the program that wrote it.`,
    );
  }
  const parsed = resultsSchema.safeParse(document);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  const place = issue === undefined || issue.path.length === 0 ? 'the document' : issue.path.join(' / ');
  throw new ResultsError(
    `This results document is damaged at ${place}: ${issue?.message ?? 'it does not follow the schema'}. Run its scenario again.`,
  );
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new ResultsError(`This is not a whole results document (${reason}). Run its scenario again.`);
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
