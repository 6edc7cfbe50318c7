import { z } from 'zod';
import { awayAnswerSchema } from './away-answer.ts';
import { calibrationAnswerSchema } from './calibration-answer.ts';
import { comparisonAnswerSchema } from './comparison-answer.ts';
import { decisionAnswerSchema } from './decision-answer.ts';
import { doubtsAnswerSchema } from './doubts-answer.ts';
import { growthAnswerSchema } from './growth-answer.ts';
import { learnedAnswerSchema } from './learned-answer.ts';
import { partAnswerSchema } from './part-answer.ts';
import { planAnswerSchema } from './plan-answer.ts';
import { promiseAnswerSchema } from './promise-answer.ts';
import { replayAnswerSchema } from './replay-answer.ts';
import { resultsSchema } from './results.ts';
import { staffAnswerSchema } from './staff-answer.ts';
import { watchedWeekSchema } from './watched-week.ts';

type JsonSchema = Readonly<Record<string, unknown>>;

/** The JSON Schema (draft 2020-12) of a results document, for programs that read it. */
export function resultsJsonSchema(): JsonSchema {
  return jsonSchemaOf(resultsSchema);
}

/** The JSON Schema of the answer for a part. */
export function partJsonSchema(): JsonSchema {
  return jsonSchemaOf(partAnswerSchema);
}

/** The JSON Schema of a calibration. */
export function calibrationJsonSchema(): JsonSchema {
  return jsonSchemaOf(calibrationAnswerSchema);
}

/** The JSON Schema of a comparison of plans. */
export function comparisonJsonSchema(): JsonSchema {
  return jsonSchemaOf(comparisonAnswerSchema);
}

/** The JSON Schema of the answer of a search for a plan. */
export function planJsonSchema(): JsonSchema {
  return jsonSchemaOf(planAnswerSchema);
}

/** The JSON Schema of the answer to which assumptions matter. */
export function doubtsJsonSchema(): JsonSchema {
  return jsonSchemaOf(doubtsAnswerSchema);
}

/** The JSON Schema of the answer to what becomes of a lab whose demand grows. */
export function growthJsonSchema(): JsonSchema {
  return jsonSchemaOf(growthAnswerSchema);
}

/** The JSON Schema of the answer to what becomes of a lab while somebody is away. */
export function awayJsonSchema(): JsonSchema {
  return jsonSchemaOf(awayAnswerSchema);
}

/** The JSON Schema of the answer to whom to have when. */
export function staffJsonSchema(): JsonSchema {
  return jsonSchemaOf(staffAnswerSchema);
}

/** The JSON Schema of what was learned from a log. */
export function learnedJsonSchema(): JsonSchema {
  return jsonSchemaOf(learnedAnswerSchema);
}

/** The JSON Schema of a watched week. */
export function weekJsonSchema(): JsonSchema {
  return jsonSchemaOf(watchedWeekSchema);
}

/** The JSON Schema of a model held against what happened. */
export function replayJsonSchema(): JsonSchema {
  return jsonSchemaOf(replayAnswerSchema);
}

/** The JSON Schema of a decision. */
export function decisionJsonSchema(): JsonSchema {
  return jsonSchemaOf(decisionAnswerSchema);
}

/** The JSON Schema of promised dates. */
export function promiseJsonSchema(): JsonSchema {
  return jsonSchemaOf(promiseAnswerSchema);
}

function jsonSchemaOf(schema: z.ZodType): JsonSchema {
  return z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
}
