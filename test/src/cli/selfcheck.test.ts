import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

interface Line {
  readonly name: string;
  readonly what: string;
  readonly source: string;
  readonly theory: number;
  readonly simulated: { readonly value: number; readonly replications: number };
  readonly standardError: number;
  readonly limit: number;
  readonly holds: boolean;
}

const folder = new Folder();
const file = folder.file('selfcheck.json');
let text = '';
let lines: Line[] = [];

beforeAll(async () => {
  const ended = await buildweek(['selfcheck', '--json', file]);
  expect(ended).toMatchObject({ exitCode: 0, stderr: '' });
  text = ended.stdout;
  const document = JSON.parse(readFileSync(file, 'utf8'));
  expect(document).toMatchObject({
    format: 'buildweek selfcheck',
    version: 1,
    seed: 'selfcheck',
    holds: true,
  });
  lines = document.lines;
}, 600_000);
afterAll(() => folder.remove());

describe('buildweek selfcheck', () => {
  it('holds the program against the standard queues, and every line holds', () => {
    expect(lines.length).toBeGreaterThan(50);
    expect(lines.filter(({ holds }) => !holds)).toEqual([]);
    expect(text).toContain(`Every line holds (${lines.length} of ${lines.length}).`);
  });

  it('prints theory, simulation, interval and verdict of each line, and where theory comes from', () => {
    expect(text).toMatch(/what +theory +simulated +interval +verdict/);
    expect(text).toMatch(/mean wait +4\.00 +\d\.\d\d.h +\d\.\d\d to \d\.\d\d +holds/);
    expect(text.match(/ holds$/gm)).toHaveLength(lines.length);
    for (const { name, source } of lines) {
      expect(text).toContain(name);
      expect(source.length).toBeGreaterThan(10);
    }
    expect(text).not.toContain('\u001b');
  });

  it('has a standard error of 1 % at most for means and 2 % for percentiles', () => {
    const isSpread = (what: string): boolean => /% of|deviation/.test(what);
    const wide = lines.filter(
      ({ what, standardError, theory }) => standardError / theory > (isSpread(what) ? 0.02 : 0.01),
    );
    expect(wide).toEqual([]);
  });

  it('corrects for the number of lines', () => {
    // Student's t with 99 degrees of freedom leaves 0.01024 / (2 x 57) on each side beyond 3.89.
    expect(lines).toHaveLength(57);
    for (const { limit } of lines) expect(limit).toBeCloseTo(3.89, 2);
  });

  it('would notice in every line a theory that is 5 % off', () => {
    const unnoticed = lines.filter(({ theory, simulated: { value }, standardError, limit }) => {
      const away = value > theory ? 0.95 : 1.05;
      return Math.abs(value - theory * away) <= limit * standardError;
    });
    expect(unnoticed).toEqual([]);
  });

  it('overwrites nothing but a self-check, before it plays anything', async () => {
    const notes = folder.write('notes.txt', 'mine');
    const { exitCode, stderr } = await buildweek(['selfcheck', '--json', notes]);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('is not a self-check that this command wrote');
    expect(readFileSync(notes, 'utf8')).toBe('mine');
  });
});
