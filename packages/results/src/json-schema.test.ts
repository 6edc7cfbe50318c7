import { describe, expect, it } from 'vitest';
import { resultsJsonSchema } from './json-schema.ts';

describe('resultsJsonSchema', () => {
  it('is what the published schema file says', async () => {
    const text = `${JSON.stringify(resultsJsonSchema(), null, 2)}\n`;
    await expect(text).toMatchFileSnapshot('../schema/results.schema.json');
  });

  it('requires every part of the document and allows no others', () => {
    const schema = resultsJsonSchema();
    expect(schema.additionalProperties).toBe(false);
    expect(schema.required).toEqual(Object.keys(schema.properties as object));
  });
});
