import { z } from 'zod';
import { resultsSchema } from './results.ts';

/** The JSON Schema (draft 2020-12) of a results document, for programs that read it. */
export function resultsJsonSchema(): Readonly<Record<string, unknown>> {
  return z.toJSONSchema(resultsSchema, { io: 'input', unrepresentable: 'any' });
}
