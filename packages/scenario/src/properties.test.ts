import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVERYTHING } from './fixture/everything.ts';
import { PLAIN_LAB } from './fixture/plain-lab.ts';
import { readShaped, readWithAnyMesh, SHAPED_LAB } from './fixture/shaped-lab.ts';
import { formatProblem } from './problem.ts';
import { readScenario, type ScenarioReading } from './read-scenario.ts';

const demo = readFileSync(new URL('../../../scenarios/demo.yaml', import.meta.url), 'utf8');

/** Every number of plain data; a lab must not hold one that is not finite. */
function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersOf);
}

/** What holds of every reading, whatever the file says. */
function expectSound(reading: ScenarioReading, text: string): void {
  if (reading.kind === 'scenario') {
    expect(numbersOf([reading.lab, reading.economics]).every(Number.isFinite)).toBe(true);
    expect(structuredClone(reading.lab)).toEqual(reading.lab);
    expect(reading.warnings.every((problem) => problem.severity === 'warning')).toBe(true);
    return;
  }
  expect(reading.problems.some((problem) => problem.severity === 'error')).toBe(true);
  const lines = text.split('\n').map((line) => line.replace(/\r$/, ''));
  for (const problem of reading.problems) {
    expect(problem.sourceLine).toBe(lines[problem.line - 1]);
    expect(problem.column).toBeGreaterThanOrEqual(1);
    expect(problem.column).toBeLessThanOrEqual(problem.sourceLine.length + 1);
    expect([problem.message, problem.expected, problem.write]).not.toContain('');
    expect(formatProblem(problem)).toContain(`lab.yaml:${problem.line}:${problem.column}: `);
  }
}

const scrap = fc.oneof(
  fc.constantFrom(
    '',
    ' ',
    ':',
    ': ',
    ',',
    '{',
    '}',
    '[',
    ']',
    '- ',
    '\n',
    '\n  ',
    '#',
    '"',
    "'",
    '*a',
    '&a ',
    '%',
    '-',
    '0',
    '-1',
    '1e999',
    '.nan',
    '~',
    'null',
    'yes',
    '!x ',
    '<<: ',
    '? ',
    '|',
    '>',
  ),
  fc.constantFrom(
    'any',
    'none',
    'always',
    'per build',
    'per part',
    '20',
    '20 min',
    '5 to 1 h',
    '0 mm',
    '1 x 1 x 1 mm',
    'per cm2 of surface',
    '1 litre',
    '28 per kg',
    '3200 USD',
    'hours',
    'skills',
    '2027-02-30',
    '25:00',
    'constructor',
    '__proto__',
  ),
  fc.string({ maxLength: 5 }),
);

describe('reading a scenario', () => {
  it.each([
    ['plain', PLAIN_LAB, 600],
    ['with shapes', SHAPED_LAB, 400],
    ['with every key', EVERYTHING, 200],
  ])(
    'gives a lab or problems with their places, and never throws, when pieces of a file are replaced: %s',
    (_, original, numRuns) => {
      const edit = fc.record({ at: fc.nat(), length: fc.nat(12), insert: scrap });
      fc.assert(
        fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), (edits) => {
          let text = original;
          for (const { at, length, insert } of edits) {
            const start = at % (text.length + 1);
            text = text.slice(0, start) + insert + text.slice(start + length);
          }
          expectSound(readShaped(text), text);
        }),
        { numRuns },
      );
    },
  );

  it('never throws when values and keys of a file are replaced by others', () => {
    const words = [...new Set(demo.match(/[\w.%-]+(?: [\w.%-]+)*/g))];
    const swap = fc.tuple(fc.constantFrom(...words), fc.oneof(fc.constantFrom(...words), scrap), fc.nat(5));
    fc.assert(
      fc.property(fc.array(swap, { minLength: 1, maxLength: 4 }), (swaps) => {
        let text = demo;
        for (const [from, to, nth] of swaps) {
          const pieces = text.split(from);
          const at = 1 + (nth % Math.max(1, pieces.length - 1));
          text = pieces.slice(0, at).join(from) + (pieces.length > 1 ? to : '') + pieces.slice(at).join(from);
        }
        expectSound(readWithAnyMesh(text), text);
      }),
      { numRuns: 150 },
    );
  });

  it('never throws on any text at all', () => {
    fc.assert(
      fc.property(
        fc.array(scrap, { maxLength: 30 }).map((scraps) => scraps.join('')),
        (text) => {
          expectSound(readScenario(text, 'lab.yaml'), text);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('gives the same lab whatever the line ends', () => {
    const reading = readWithAnyMesh(demo);
    const windows = readWithAnyMesh(demo.replaceAll('\n', '\r\n'));
    if (reading.kind === 'problems' || windows.kind === 'problems') throw new Error('the demo has problems');
    expect(windows.lab).toEqual(reading.lab);
    expect(windows.assumptions).toEqual(reading.assumptions);
  });
});
