import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { formatProblem } from '@buildweek/scenario';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readingOf } from '../files/scenario-file.ts';
import { logFacts } from './log-facts.ts';
import { readLog } from './read-log.ts';
import { scenarioFromLog } from './scenario-from-log.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'buildweek-first-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

function write(name: string, rows: readonly (readonly string[])[]): string {
  const path = join(folder, name);
  const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;
  writeFileSync(path, rows.map((cells) => cells.map(cell).join(';')).join('\n'));
  return path;
}

async function scenarioOf(rows: readonly (readonly string[])[], runs?: readonly (readonly string[])[]) {
  const log = await readLog(write('log.csv', rows), {
    machines: runs === undefined ? undefined : write('runs.csv', runs),
  });
  return scenarioFromLog(log, logFacts(log, null)).text;
}

/** The lab of a scenario; what is wrong with it fails the test. */
function labOf(text: string) {
  const reading = readingOf(text, 'first.yaml', '');
  if (reading.kind === 'scenario') return reading.lab;
  throw new Error(`${reading.problems.map(formatProblem).join('\n')}\n${text}`);
}

/** Words that would mean something else in a scenario, in a terminal, in a page, or in a spreadsheet. */
const hostile = fc.constantFrom(
  '',
  'ring',
  'Ring: large',
  '- x',
  '{ jobs: 1 }',
  '[1, 2]',
  '# nothing',
  'a # b',
  '"quoted"',
  "it's",
  '=HYPERLINK("http://x","y")',
  '@SUM(1)',
  '<script>alert(1)</script>',
  '\u001b[31mred',
  '\u202eabc',
  'yes',
  'null',
  '__proto__',
  'constructor',
  '12',
  '1.50',
  '*anchor',
  '&a',
  '!tag',
  '%x',
  '| x',
  '> x',
  '日本語',
  'a'.repeat(300),
  'two\nlines',
  'tab\there',
);
const row = fc.record({
  day: fc.integer({ min: 0, max: 200 }),
  part: hostile,
  process: hostile,
  material: hostile,
  machine: hostile,
  pieces: fc.constantFrom('', '1', '3', '40', 'many', '-1', '1e9'),
  priority: fc.constantFrom('', 'rush', 'normal', 'x'),
  took: fc.integer({ min: 0, max: 9 }),
  minutes: fc.integer({ min: 0, max: 90 }),
});
const HEADINGS = [
  'No',
  'Asked',
  'Part',
  'Process',
  'Material',
  'Machine',
  'Qty',
  'Priority',
  'Finished',
  'Sand work start',
  'Sand work end',
];
const START = Date.parse('2026-01-05T08:00Z');
const stamp = (time: number): string => new Date(time).toISOString().slice(0, 16).replace('T', ' ');

describe('scenarioFromLog', () => {
  it('makes a scenario that can be read of whatever stands in a log', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 12, maxLength: 60 }), async (rows) => {
        const requests = rows.map((one, index) => {
          const asked = START + one.day * 86_400_000;
          const finished = asked + one.took * 86_400_000;
          return [
            String(index),
            stamp(asked),
            one.part,
            one.process,
            one.material,
            one.machine,
            one.pieces,
            one.priority,
            stamp(finished),
            stamp(finished),
            stamp(finished + one.minutes * 60_000),
          ];
        });
        const runs = rows.map((one, index) => [
          one.machine || 'm',
          stamp(START + one.day * 86_400_000),
          stamp(START + one.day * 86_400_000 + one.minutes * 60_000),
          'ok',
          String(index),
        ]);
        const alone = labOf(await scenarioOf([HEADINGS, ...requests]));
        expect(alone.demand.length).toBeGreaterThan(0);
        const both = await scenarioOf(
          [HEADINGS, ...requests],
          [['Machine', 'Start', 'End', 'Result', 'Job'], ...runs],
        );
        expect(labOf(both).machines.length).toBeGreaterThan(0);
      }),
      { numRuns: 15, seed: 5, endOnFailure: true },
    );
  });

  it('takes as few people as carry the demand', async () => {
    const rows = (perDay: number): string[][] =>
      Array.from({ length: 60 * perDay }, (_, index) => [
        String(index),
        stamp(START + Math.floor(index / perDay) * 86_400_000 + (index % perDay) * 60_000),
        'ring',
        'filament',
        '4',
      ]);
    const peopleOf = async (perDay: number): Promise<number> => {
      const lab = labOf(await scenarioOf([['No', 'Asked', 'Part', 'Process', 'Qty'], ...rows(perDay)]));
      return lab.people.reduce((sum, { count }) => sum + count, 0);
    };
    expect(await peopleOf(1)).toBe(1);
    expect(await peopleOf(30)).toBeGreaterThan(3);
  });
});
