import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type JsonSchema, scenarioJsonSchema } from './json-schema.ts';

describe('the JSON Schema of scenarios', () => {
  it('is checked in as it is generated', async () => {
    const text = `${JSON.stringify(scenarioJsonSchema(), null, 2)}\n`;
    await expect(text).toMatchFileSnapshot('../schema/scenario.schema.json');
  });

  it('describes every key', () => {
    const without: string[] = [];
    const walk = (schema: JsonSchema, path: string): void => {
      for (const [key, property] of Object.entries(schema.properties ?? {})) {
        if (typeof property.description !== 'string') without.push(`${path}/${key}`);
        walk(property, `${path}/${key}`);
      }
      const rest = schema.additionalProperties;
      if (typeof rest === 'object') walk(rest, `${path}/*`);
      if (schema.items !== undefined) walk(schema.items, `${path}/items`);
      for (const branch of schema.anyOf ?? []) walk(branch, path);
    };
    walk(scenarioJsonSchema(), '');
    expect(without).toEqual([]);
  });

  it('is named in the first line of every scenario of the project', () => {
    for (const name of ['demo', 'small']) {
      const text = readFileSync(new URL(`../../../scenarios/${name}.yaml`, import.meta.url), 'utf8');
      expect(text.split('\n')[0]).toBe(
        '# yaml-language-server: $schema=../packages/scenario/schema/scenario.schema.json',
      );
    }
  });
});
