import { scenarioSchema } from './schema/scenario-schema.ts';
import { z } from './schema/zod.ts';

/** A JSON Schema, as plain data. */
export interface JsonSchema {
  readonly [keyword: string]: unknown;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly additionalProperties?: boolean | JsonSchema;
  readonly items?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
}

/**
 * How a worded value goes on behind a comma inside braces: `{ takes: 10 to 45 min, usually 20 }`. YAML itself
 * takes these words for a key without a value; `readScenario` puts them together again.
 */
const CONTINUATION = '^(usually|mean|variation|deviation|scale|shape|only|plus) ';
/** The same of a list of numbers; only where keys are fixed, since a name may start with a number. */
const NUMBERS = '^[0-9.]+( |$)';

/** The JSON Schema (draft 2020-12) of a scenario file, for editors. */
export function scenarioJsonSchema(): JsonSchema {
  return z.toJSONSchema(scenarioSchema, {
    io: 'input',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => {
      // The largest whole number of JavaScript says nothing to a reader.
      if (jsonSchema.maximum === Number.MAX_SAFE_INTEGER) delete jsonSchema.maximum;
      const rest = jsonSchema.additionalProperties;
      if (rest === undefined) return;
      jsonSchema.patternProperties = {
        [CONTINUATION]: { type: 'null' },
        ...(rest === false ? { [NUMBERS]: { type: 'null' } } : {}),
      };
    },
  }) as JsonSchema;
}
