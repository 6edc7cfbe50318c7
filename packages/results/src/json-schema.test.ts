import { describe, expect, it } from 'vitest';
import {
  awayJsonSchema,
  calibrationJsonSchema,
  comparisonJsonSchema,
  decisionJsonSchema,
  doubtsJsonSchema,
  growthJsonSchema,
  learnedJsonSchema,
  partJsonSchema,
  planJsonSchema,
  promiseJsonSchema,
  replayJsonSchema,
  resultsJsonSchema,
  staffJsonSchema,
  weekJsonSchema,
} from './json-schema.ts';

const SCHEMAS = [
  ['doubts', doubtsJsonSchema],
  ['growth', growthJsonSchema],
  ['learned', learnedJsonSchema],
  ['away', awayJsonSchema],
  ['results', resultsJsonSchema],
  ['part', partJsonSchema],
  ['calibration', calibrationJsonSchema],
  ['staff', staffJsonSchema],
  ['comparison', comparisonJsonSchema],
  ['plan', planJsonSchema],
  ['decision', decisionJsonSchema],
  ['promise', promiseJsonSchema],
  ['replay', replayJsonSchema],
  ['week', weekJsonSchema],
] as const;

describe('The published JSON Schema', () => {
  it.each(SCHEMAS)('of %s is what its file says', async (name, schema) => {
    const text = `${JSON.stringify(schema(), null, 2)}\n`;
    await expect(text).toMatchFileSnapshot(`../schema/${name}.schema.json`);
  });

  it.each(SCHEMAS)('of %s requires every part of the document and allows no others', (_, schemaOf) => {
    const schema = schemaOf();
    expect(schema.additionalProperties).toBe(false);
    expect(schema.required).toEqual(Object.keys(schema.properties as object));
  });
});
