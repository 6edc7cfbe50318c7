import { type JsonSchema, scenarioJsonSchema } from './json-schema.ts';
import { listed, nearest } from './nearest.ts';
import type { Reading } from './reading.ts';
import { scenarioSchema } from './schema/scenario-schema.ts';
import type { z } from './schema/zod.ts';
import { describeNode, type SourceNode, type SourcePath, toPlain } from './source/source-node.ts';
import { hoursKeyMeant } from './words/closed-days.ts';

type Issue = z.core.$ZodIssue;

/** Keys that are written by habit for others of this format. */
const HABITS: Readonly<Record<string, string>> = {
  absence: 'absent',
  amount: 'pieces',
  area: 'surface',
  batch: 'holds',
  breakdown: 'breaks down',
  breakdowns: 'breaks down',
  'build platform': 'platform',
  'build volume': 'platform',
  capacity: 'holds',
  changeover: 'material change',
  cooldown: 'cool-down',
  dimensions: 'size',
  duration: 'takes',
  failure: 'fails',
  failures: 'fails',
  file: 'mesh',
  gap: 'spacing',
  holiday: 'leave',
  holidays: 'leave',
  'layer height': 'layer',
  'layer thickness': 'layer',
  machine: 'on',
  mtbf: 'breaks down',
  number: 'count',
  quantity: 'pieces',
  scrap: 'rejects',
  setup: 'set-up',
  shift: 'hours',
  shifts: 'hours',
  size: 'platform',
  sick: 'absent',
  skill: 'by',
  station: 'on',
  stl: 'mesh',
  supports: 'supported volume',
  time: 'takes',
  unattended: 'runs alone',
  vacation: 'leave',
  volume: 'platform',
  warmup: 'warm-up',
  who: 'by',
};

/**
 * Checks which keys there are and whether groups, lists and values stand where they should, and reports what
 * is wrong. Values that are wrongly worded are left to those who read them.
 */
export function checkStructure(reading: Reading): void {
  const { root } = reading;
  checkRoutes(reading);
  checkHours(reading);
  const result = scenarioSchema.safeParse(toPlain(root));
  if (result.success) return;
  const issues = result.error.issues.flatMap((issue) => resolveUnion(issue, root, []));
  // Unknown keys first: what seems to be missing beside one is probably what was meant.
  const isUnknown = (issue: Issue): boolean => issue.code === 'unrecognized_keys';
  for (const issue of issues.filter(isUnknown)) reportUnknownKeys(reading, issue);
  for (const issue of issues.filter((candidate) => !isUnknown(candidate))) reportIssue(reading, issue);
}

/** Replaces the issue of a choice between structures by those of the structure that was probably meant. */
function resolveUnion(issue: Issue, root: SourceNode, base: SourcePath): Issue[] {
  const path = [...base, ...issue.path] as (string | number)[];
  if (issue.code !== 'invalid_union') return [{ ...issue, path }];
  const node = nodeAt(root, path);
  const branches = issue.errors.filter(
    (errors) => !errors.some((error) => error.path.length === 0 && error.code === 'invalid_type'),
  );
  const branch = branches[0];
  if (branch !== undefined && node !== undefined && node.kind !== 'scalar') {
    return branch.flatMap((error) => resolveUnion(error as Issue, root, path));
  }
  // None of the structures was begun: a value where there is none, or one where a value is needed.
  const wanted = issue.errors.flatMap((errors) =>
    errors.flatMap((error) =>
      error.code === 'invalid_type' && error.path.length === 0 ? [error.expected] : [],
    ),
  );
  const structures = wanted.filter((kind) => kind === 'array' || kind === 'object' || kind === 'record');
  const takesValue = structures.length < issue.errors.length;
  if (node?.kind === 'scalar' && takesValue) return [];
  return [{ code: 'invalid_type', expected: structures[0] ?? 'string', path, message: '' } as Issue];
}

function reportUnknownKeys(reading: Reading, issue: Issue): void {
  if (issue.code !== 'unrecognized_keys') return;
  const path = issue.path as SourcePath;
  if (reading.isBroken(path)) return;
  const known = knownKeys(path);
  const written = reading.nodeAt(path);
  const unused = known.filter((key) => !keysAt(written).includes(key));
  for (const key of issue.keys) {
    const habit = HABITS[key.toLowerCase()];
    const meant = nearest(key, unused) ?? (habit !== undefined && unused.includes(habit) ? habit : null);
    // A key that is written twice, once wrongly: only one of them can be meant.
    const there =
      nearest(
        key,
        known.filter((one) => !unused.includes(one)),
      ) ?? (habit !== undefined && known.includes(habit) ? habit : null);
    const isClosed = path.length === 0 && meant === null && hoursKeyMeant(key) === 'closed';
    const glued = /^([^:]+):(\S.*)$/.exec(key);
    reading.markMisspelt(path);
    reading.report([...path, key], 'key', {
      message: `"${key}" is not known ${path.length === 0 ? 'here' : `in "${path[path.length - 1]}"`}.`,
      found: key,
      expected: `one of ${listed(unused, 30)}`,
      write:
        glued !== null && known.includes(glued[1] ?? '')
          ? `${glued[1]}: ${glued[2]}`
          : isClosed
            ? `${closedWith(reading.nodeAt([...path, key]))} under "hours"`
            : (meant ?? (there === null ? 'one of these keys, or delete the line' : insteadAt(there))),
    });
  }
}

function keysAt(written: SourceNode | undefined): string[] {
  return written?.kind === 'map' ? written.entries.map(({ key }) => key) : [];
}

function insteadAt(key: string): string {
  return `the value at "${key}", which is there too, and delete this line`;
}

function reportIssue(reading: Reading, issue: Issue): void {
  const path = issue.path as SourcePath;
  if (reading.isBroken(path)) return;
  const node = reading.nodeAt(path);
  if (node === undefined) {
    // A key that is missing is reported by whoever needs it, who knows what to write.
    if (path.length > 1) return;
    const key = String(path[0]);
    if (reading.isMisspelt([])) return;
    reading.report([], 'key', {
      message: `"${key}" is missing.`,
      expected: `a key "${key}" at the start of a line`,
      write: TOP_LEVEL_EXAMPLES[key] ?? `${key}:`,
    });
    return;
  }
  if (node.kind === 'empty' && node.isReported) {
    reading.breakOff(path);
    return;
  }
  const wanted = issue.code === 'invalid_type' ? issue.expected : null;
  const isStructure = wanted === 'object' || wanted === 'record' || wanted === 'array';
  if (node.kind === 'scalar' && !isStructure) return;
  reading.breakOff(path);
  reading.report(path, 'value', {
    message:
      node.kind === 'empty'
        ? `"${path[path.length - 1]}" is empty.`
        : `This is ${kindOf(node)}, which does not fit here.`,
    found: describeNode(node),
    expected: wantedWords(wanted),
    write:
      colonForgotten(path, node) ??
      exampleAt(path) ??
      (node.kind === 'empty' ? 'a value, or delete the line' : wantedWords(wanted)),
  });
}

/** `resin 1 to 4` in the place of `resin: 1 to 4`; null where that is not how a key without a value looks. */
function colonForgotten(path: SourcePath, node: SourceNode): string | null {
  const [, name, range] = /^(.*\S)\s+(\d+\s+to\s+\d.*)$/.exec(String(path[path.length - 1])) ?? [];
  return node.kind === 'empty' && name !== undefined ? `${name}: ${range}` : null;
}

/** Lists of stages whose lines are not indented enough come out as one item with many keys. */
function checkRoutes(reading: Reading): void {
  const routes = reading.nodeAt(['routes']);
  if (routes?.kind !== 'map') return;
  for (const route of routes.entries) {
    if (route.node.kind !== 'list') continue;
    route.node.items.forEach((item, index) => {
      const path = ['routes', route.key, index];
      const names = item.kind === 'map' ? item.entries : [];
      if (item.kind === 'map' && names.length === 1 && names[0]?.node.kind === 'map') return;
      reading.breakOff(path);
      const name = names[0]?.key ?? (item.kind === 'scalar' ? item.text.replace(/:.*/, '') : 'wash');
      reading.report(path, 'key', {
        message:
          names.length > 1
            ? `The lines below "${name}" are not indented far enough to belong to it.`
            : `Stage "${name}" does not say what is done.`,
        found: describeNode(item),
        expected:
          'a dash, the name of the stage, and what is done there in braces or on lines indented below it',
        write: `- ${name}: { by: hand work, takes: 20 min }`,
      });
    });
  }
}

/** Days without work under another key than theirs: they are no hours that have a name. */
function checkHours(reading: Reading): void {
  const hours = reading.nodeAt(['hours']);
  if (hours?.kind !== 'map') return;
  for (const { key, node } of hours.entries) {
    const meant = hoursKeyMeant(key);
    if (meant !== 'closed' || key === meant || node.kind === 'map' || node.kind === 'empty') continue;
    reading.breakOff(['hours', key]);
    reading.report(['hours', key], 'key', {
      message: `"${key}" is no name of hours; days on which nobody comes are called "closed".`,
      found: key,
      expected: 'closed, with dates',
      write: closedWith(node),
    });
  }
}

/** `closed` with the dates that stand somewhere else. */
function closedWith(node: SourceNode | undefined): string {
  if (node?.kind === 'list') return `closed: [${node.items.map(describeNode).join(', ')}]`;
  return `closed: ${node?.kind === 'scalar' ? node.text : '[2027-12-24]'}`;
}

const TOP_LEVEL_EXAMPLES: Readonly<Record<string, string>> = {
  buildweek: 'buildweek: 1',
  routes: 'routes: { plain: [ { sand: { by: hand work, takes: 20 min } } ] }',
  parts: 'parts: { housing: { route: plain } }',
  demand: 'demand: { housing: { jobs: 14 per week } }',
};

function wantedWords(wanted: string | null): string {
  if (wanted === 'array') return 'a list: [one, another], or one item on each line behind a dash';
  if (wanted === 'object' || wanted === 'record')
    return 'a group of keys, in braces or on lines indented below';
  return 'one value';
}

function kindOf(node: SourceNode): string {
  return { scalar: 'a single value', empty: 'empty', list: 'a list', map: 'a group of keys' }[node.kind];
}

let jsonSchema: JsonSchema | null = null;

/** The schemas that hold at a path: several where there is a choice. */
function schemasAt(path: SourcePath): JsonSchema[] {
  jsonSchema ??= scenarioJsonSchema();
  let schemas = alternatives(jsonSchema);
  for (const step of path) {
    schemas = schemas.flatMap((schema) => {
      const rest = schema.additionalProperties;
      const next =
        typeof step === 'number'
          ? schema.items
          : (schema.properties?.[step] ?? (typeof rest === 'object' ? rest : undefined));
      return next === undefined ? [] : alternatives(next);
    });
  }
  return schemas;
}

function alternatives(schema: JsonSchema): JsonSchema[] {
  return schema.anyOf === undefined ? [schema] : [schema, ...schema.anyOf.flatMap(alternatives)];
}

function knownKeys(path: SourcePath): string[] {
  return [...new Set(schemasAt(path).flatMap((schema) => Object.keys(schema.properties ?? {})))];
}

function exampleAt(path: SourcePath): string | null {
  const key = path[path.length - 1];
  if (typeof key !== 'string') return null;
  for (const schema of schemasAt(path)) {
    const example = Array.isArray(schema.examples) ? schema.examples[0] : undefined;
    if (typeof example === 'string' || typeof example === 'number') return `${key}: ${example}`;
  }
  return null;
}

function nodeAt(root: SourceNode, path: SourcePath): SourceNode | undefined {
  let node: SourceNode | undefined = root;
  for (const step of path) {
    node =
      node?.kind === 'map'
        ? node.entries.find((entry) => entry.key === String(step))?.node
        : node?.kind === 'list'
          ? node.items[Number(step)]
          : undefined;
  }
  return node;
}
