import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isPair, isScalar, parseDocument, visit } from 'yaml';
import { readWithAnyMesh } from './fixture/shaped-lab.ts';

const textOf = (name: string): string =>
  readFileSync(new URL(`../../../scenarios/${name}.yaml`, import.meta.url), 'utf8');

/** Keys of the format, and names that are referred to, with their offsets. */
function keysOf(text: string): { key: string; start: number; end: number }[] {
  const keys: { key: string; start: number; end: number }[] = [];
  visit(parseDocument(text), (_, node) => {
    if (!isPair(node) || !isScalar(node.key) || node.value === null || !node.key.range) return;
    keys.push({ key: String(node.key.value), start: node.key.range[0], end: node.key.range[1] });
  });
  return keys;
}

/** Names that nothing else in these files refers to: they may be anything. */
const FREE_NAMES = new Set([
  ...['technicians', 'evening help', 'technician'],
  ...[
    'questions',
    'prepare file',
    'build',
    'print',
    'sand',
    'wash',
    'dry',
    'cure',
    'inspect',
    'unpack',
    'remove powder',
    'blast',
  ],
]);

describe.each(['small', 'demo'])('the scenario "%s" of the project', (name) => {
  const text = textOf(name);

  it('is read without a warning', () => {
    expect(readWithAnyMesh(text, name)).toMatchObject({ kind: 'scenario', warnings: [] });
  });

  it('with a letter missing in any of its keys gets a message at that line', () => {
    const silent: string[] = [];
    for (const { key, start, end } of keysOf(text)) {
      if (FREE_NAMES.has(key) || (name === 'small' && key === 'day')) continue;
      if (key === 'remove supports' && text.slice(0, start).endsWith('- ')) continue;
      const typo = key.length > 3 ? key.slice(0, 2) + key.slice(3) : `${key}x`;
      const reading = readWithAnyMesh(text.slice(0, start) + typo + text.slice(end), name);
      const line = text.slice(0, start).split('\n').length;
      const problems = reading.kind === 'problems' ? reading.problems : reading.warnings;
      // A name of a group is told where it is referred to, or as one that nothing refers to.
      const isTold =
        problems.some((problem) => problem.line === line) ||
        problems.some((problem) => problem.write.includes(typo) || problem.expected.includes(typo));
      if (!isTold) silent.push(`line ${line}: ${key} -> ${typo}`);
    }
    expect(silent).toEqual([]);
  });

  it('names the key itself, and proposes it, for every key of the format', () => {
    const known =
      /^(count|hours|skills|other duties|grace|class|start|carrier|loaded|holds|takes|by|on|wait|route|material|settings|fits|print|jobs|pieces|promise|rush|rush promise|may pause|people|machines|stations|routes|parts|demand|simulate|weeks|seed|zone|starts|name|cut-off|empties carrier|leave|absent|maintenance|every|rejects|ask requester|at most|revises|cancels|size|mesh|volume|finish|for finish|infill|lays down|orientation|platform)$/;
    const keys = keysOf(text).filter(({ key }) => known.test(key) && key.length > 3);
    expect(keys.length).toBeGreaterThan(15);
    for (const { key, start, end } of keys) {
      // The print stage of a route bears the name of a key.
      if (key === 'print' && text.slice(0, start).endsWith('- ')) continue;
      const typo = `${key.slice(0, -2)}${key.at(-1)}${key.at(-2)}`;
      if (typo === key) continue;
      const reading = readWithAnyMesh(text.slice(0, start) + typo + text.slice(end), name);
      const line = text.slice(0, start).split('\n').length;
      const column = start - text.lastIndexOf('\n', start - 1);
      if (reading.kind !== 'problems') throw new Error(`"${typo}" in line ${line} was accepted.`);
      expect(reading.problems).toContainEqual(
        expect.objectContaining({ line, column, found: typo, write: key }),
      );
    }
  });
});

describe('the demo', () => {
  const reading = readWithAnyMesh(textOf('demo'), 'demo');
  if (reading.kind === 'problems') throw new Error('the demo has problems');
  const { lab, settings } = reading;

  it('has three processes, about ten machines, two technicians and evening help, and some part types', () => {
    expect(new Set(lab.machines.map((machine) => machine.process))).toEqual(new Set(['MEX', 'VPP', 'PBF']));
    const machines = lab.machines.reduce((sum, machine) => sum + machine.count, 0);
    expect(machines).toBeGreaterThanOrEqual(8);
    expect(machines).toBeLessThanOrEqual(12);
    expect(lab.people.map((group) => group.count)).toEqual([2, 1]);
    expect(lab.parts.length).toBeGreaterThanOrEqual(6);
    expect(lab.demand).toHaveLength(lab.parts.length);
  });

  it('plays thirteen weeks after weeks that are left out', () => {
    expect(settings).toEqual({
      seed: 'spring',
      weeks: 13,
      ignoredWeeks: 'auto',
      capWeeks: 13,
      replications: 100,
      precision: null,
      replicationLimit: 1000,
      level: 0.95,
    });
  });

  it('lists every value with where it came from, and stated ones with their line', () => {
    const lines = textOf('demo').split('\n');
    const stated = reading.assumptions.filter((assumption) => assumption.source === 'stated in the scenario');
    expect(stated.length).toBeGreaterThan(100);
    for (const { value, line } of stated) {
      expect(lines[(line ?? 0) - 1]).toContain(value.split(',')[0]);
    }
    expect(reading.assumptions).toContainEqual({
      what: 'machines / filament / warm-up',
      value: '3 to 18 min, usually 9',
      source: 'default of a machine class',
      line: null,
    });
    expect(reading.assumptions).toContainEqual({
      what: `demand / ${lab.demand[0]?.name} / when`,
      value: 'day (lab hours)',
      source: 'default of the program',
      line: null,
    });
    const names = reading.assumptions.map((assumption) => assumption.what);
    expect(new Set(names).size).toBe(names.length);
  });
});
