import type { z } from 'zod';
import { DECISION_VERSION, type DecisionAnswer, decisionAnswerSchema } from './decision-answer.ts';
import { RESULTS_VERSION, type Results, resultsSchema } from './results.ts';

/** A text that is no document of this version; the message says why, and what to do. */
export class ResultsError extends Error {}

/** What a report can be made of. */
export type ReportDocument = Results | DecisionAnswer;

/** A kind of document that is read back. */
interface DocumentKind {
  readonly name: string;
  readonly version: number;
  readonly schema: z.ZodType<ReportDocument>;
  /** How to get another. */
  readonly again: string;
}

const RESULTS = 'buildweek results';
const DECISION = 'buildweek decision';

const KINDS: Readonly<Record<typeof RESULTS | typeof DECISION, DocumentKind>> = {
  [RESULTS]: {
    name: 'results document',
    version: RESULTS_VERSION,
    schema: resultsSchema,
    again: 'Run its scenario again',
  },
  [DECISION]: {
    name: 'decision',
    version: DECISION_VERSION,
    schema: decisionAnswerSchema,
    again: 'Decide on its scenario again',
  },
};

/**
 * Reads a results document.
 * @param text the whole document
 * @throws ResultsError when it is damaged, something else, or of another version
 */
export function parseResults(text: string): Results {
  const document = parsed(text, [RESULTS]);
  if (document.format !== RESULTS) throw new ResultsError('This is not a results document.');
  return document;
}

/**
 * Reads anything that a report is made of: results, or a decision.
 * @param text the whole document
 * @throws ResultsError when it is damaged, something else, or of another version
 */
export function parseReportDocument(text: string): ReportDocument {
  return parsed(text, [RESULTS, DECISION]);
}

function parsed(text: string, formats: readonly (keyof typeof KINDS)[]): ReportDocument {
  const document = parseJson(text);
  const format = formats.find((one) => isObject(document) && document.format === one);
  if (!isObject(document) || format === undefined) {
    const names = formats.map((one) => `a ${KINDS[one].name}`).join(' or ');
    const begins = formats.map((one) => `"format": "${one}"`).join(' or ');
    throw new ResultsError(`This is not ${names}: it does not begin with ${begins}.`);
  }
  const { name, version, schema, again } = KINDS[format];
  if (document.version !== version) {
    const found = JSON.stringify(document.version) ?? 'none';
    throw new ResultsError(
      `This ${name} has version ${found}; this program reads version ${version}. ${again} with this program, or open it with the program that wrote it.`,
    );
  }
  const read = schema.safeParse(document);
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  const place = issue === undefined || issue.path.length === 0 ? 'the document' : issue.path.join(' / ');
  throw new ResultsError(
    `This ${name} is damaged at ${place}: ${issue?.message ?? 'it does not follow the schema'}. ${again}.`,
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
