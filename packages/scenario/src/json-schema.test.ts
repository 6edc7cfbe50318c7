import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { PLAIN_LAB } from './fixture/plain-lab.ts';
import { QUEUES } from './fixture/queues.ts';
import { SHAPED_LAB } from './fixture/shaped-lab.ts';
import { type JsonSchema, scenarioJsonSchema } from './json-schema.ts';

const textOf = (name: string): string =>
  readFileSync(new URL(`../../../scenarios/${name}.yaml`, import.meta.url), 'utf8');

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

  const validate = new Ajv2020({ strict: false, allErrors: true }).compile(scenarioJsonSchema());

  it.each([
    ...['demo', 'small'].map((name) => [name, textOf(name)]),
    ['plain lab', PLAIN_LAB],
    ['lab of shapes', SHAPED_LAB],
    ...Object.entries(QUEUES),
  ])('accepts what the program accepts, as an editor reads it: %s', (_, text = '') => {
    validate(parse(text));
    expect(validate.errors ?? []).toEqual([]);
  });

  it('lets an editor mark keys that are not known and values of the wrong kind', () => {
    const places = (text: string): string[] => {
      validate(parse(text));
      return (validate.errors ?? []).map((error) => error.instancePath);
    };
    expect(places(PLAIN_LAB.replace('skills:', 'skils:'))).toContain('/people/technicians');
    expect(places(PLAIN_LAB.replace('count: 2, hours', 'count: -1, hours'))).toEqual([
      '/people/technicians/count',
    ]);
    expect(places(PLAIN_LAB.replace('small mask VPP', 'small mask VP'))).toEqual(['/machines/resin/class']);
    expect(places(PLAIN_LAB.replace('takes: 12 min per batch', 'takes: 12'))).toEqual([
      '/stations/washer/takes',
    ]);
  });

  it('is named in the first line of every scenario of the project', () => {
    for (const name of ['demo', 'small']) {
      expect(textOf(name).split('\n')[0]).toBe(
        '# yaml-language-server: $schema=../packages/scenario/schema/scenario.schema.json',
      );
    }
  });
});
