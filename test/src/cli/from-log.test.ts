import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { learnedAnswerSchema } from '@buildweek/results';
import { readScenario } from '@buildweek/scenario';
import { afterAll, describe, expect, it } from 'vitest';
import { scenarioMeshes } from '../scenario-meshes.ts';
import { buildweek, Folder, ROOT } from './buildweek.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const LOG = join(ROOT, 'scenarios/demo-log.csv');
const MACHINES = join(ROOT, 'scenarios/demo-machines.csv');
const DEMO = join(ROOT, 'scenarios/demo.yaml');
/** Invented people who asked for the jobs of the demo log. */
const PEOPLE = /Bo Marten|Ada Quill|Kit Hazel|Ned Teal/;

function labIn(text: string) {
  const reading = readScenario(text, 'from-log.yaml', () => null, scenarioMeshes);
  if (reading.kind === 'scenario') return reading;
  throw new Error(reading.problems.map(({ line, message }) => `${line}: ${message}`).join('\n'));
}

describe('buildweek from-log', () => {
  it('makes a scenario of the demo log alone that can be played and keeps up', async () => {
    const output = folder.file('first.yaml');
    const said = await buildweek(['from-log', LOG, '--machines', MACHINES, '--output', output]);
    expect(said.stderr).toBe('');
    expect(said.exitCode).toBe(0);
    expect(said.stdout).toContain('finished before it was asked for');
    expect(said.stdout).toMatch(/Names of requesters .* go nowhere/);
    const text = readFileSync(output, 'utf8');
    expect(text + said.stdout).not.toMatch(PEOPLE);
    const { lab } = labIn(text);
    expect(lab.machines.map(({ name, count }) => [name, count])).toEqual([
      ['filament', 4],
      ['resin', 3],
      ['powder', 2],
      ['heated', 1],
    ]);
    const played = await buildweek(['run', output, '--replications', '20', '--json', '-']);
    expect(played.exitCode).toBe(0);
    expect(played.stderr).not.toContain('error');
    expect(played.stdout).toContain('"format": "buildweek results"');
    expect(played.stdout).not.toMatch(PEOPLE);
  });

  it('writes what was learned as a document and as a page, without names of people unless asked', async () => {
    const page = folder.file('learned.html');
    const learned = await buildweek(['from-log', LOG, '--machines', MACHINES, '--json', '-', '--page', page]);
    expect(learned.exitCode).toBe(0);
    const answer = learnedAnswerSchema.parse(JSON.parse(learned.stdout));
    expect(learned.stdout + readFileSync(page, 'utf8')).not.toMatch(PEOPLE);
    // The truth stands in scenarios/demo-log-truth.json: 12 % of resin builds, 5.2 min to remove the supports of a jig.
    const failed = answer.failures.find(({ of }) => of === 'resin')?.estimate;
    expect(failed?.low).toBeLessThan(0.12);
    expect(failed?.high).toBeGreaterThan(0.12);
    const jig = answer.durations.find(({ of, stage }) => of === 'drill jig' && stage === 'remove supports');
    expect(jig).toMatchObject({ unit: 'min', per: 'part' });
    expect(jig?.families[0]?.mean.value).toBeGreaterThan(5);
    expect(jig?.families[0]?.mean.value).toBeLessThan(5.4);
    expect(answer.weeks.variation).toBeGreaterThan(0.15);
    const kept = await buildweek(['from-log', LOG, '--keep-requesters']);
    expect(kept.stdout).toMatch(PEOPLE);
  });

  it('puts the demand of the log into a scenario, and leaves the rest of it line by line', async () => {
    const { stdout, exitCode } = await buildweek([
      'from-log',
      LOG,
      '--machines',
      MACHINES,
      '--scenario',
      DEMO,
      '--output',
      '-',
    ]);
    expect(exitCode).toBe(0);
    const demo = readFileSync(DEMO, 'utf8').split('\n');
    const changed = stdout.split('\n');
    const kept = (line: string): boolean => changed.includes(line);
    expect(
      demo.slice(0, demo.indexOf('parts: # made by the script of packages/geometry, or typed')).every(kept),
    ).toBe(true);
    expect(
      demo.slice(demo.indexOf('sent out: # to a print service, and only what a demand names')).every(kept),
    ).toBe(true);
    const { lab } = labIn(stdout);
    const rush = Object.fromEntries(lab.demand.map(({ part, rushShare }) => [part, rushShare]));
    // The truth is 25 %, beside 10 % in the scenario: beyond all chance of 230 jobs.
    expect(rush.gear).toBeGreaterThan(0.15);
    expect(stdout).toMatch(/^ {4}jobs: [\d.]+ per week # \d+ jobs in [\d.]+ weeks; 95 %: [\d.]+ to [\d.]+/m);
  });

  it('writes nothing when something is wrong, and says what', async () => {
    const output = folder.file('nothing.yaml');
    const log = folder.file('three.csv');
    writeFileSync(log, 'asked;part\n2026-03-04;ring\n2026-03-05;ring\n2026-03-06;ring\n');
    const { stderr, stdout, exitCode } = await buildweek(['from-log', log, '--output', output]);
    expect(exitCode).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('three.csv:1: error: There are only 3 rows below the headings.');
    expect(existsSync(output)).toBe(false);
  });

  it('overwrites only what it wrote itself', async () => {
    const output = folder.file('mine.yaml');
    writeFileSync(output, 'mine\n');
    const refused = await buildweek(['from-log', LOG, '--output', output]);
    expect(refused.exitCode).toBe(2);
    expect(readFileSync(output, 'utf8')).toBe('mine\n');
    const again = folder.file('first.yaml');
    expect((await buildweek(['from-log', LOG, '--output', again])).exitCode).toBe(0);
  });
});
