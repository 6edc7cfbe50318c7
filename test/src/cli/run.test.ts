import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { parseResults } from '@buildweek/results';
import { readScenario } from '@buildweek/scenario';
import { createInProcessExecutor, runStudy } from '@buildweek/study';
import { afterAll, describe, expect, it } from 'vitest';
import { buildweek, Folder, queueScenario, ROOT } from './buildweek.ts';

const folder = new Folder();
afterAll(() => folder.remove());
const queue = folder.write('queue.yaml', queueScenario());

describe('buildweek run', () => {
  it('gives the same results for any number of workers, byte by byte', async () => {
    const arguments_ = ['run', 'scenarios/small.yaml', '--replications', '20', '--json', '-', '--workers'];
    const one = await buildweek([...arguments_, '1']);
    expect(one.exitCode).toBe(0);
    for (const workers of ['2', '3'])
      expect((await buildweek([...arguments_, workers])).stdout).toBe(one.stdout);
  });

  it('gives what a study without workers gives', async () => {
    const { stdout } = await buildweek(['run', queue, '--json', '-', '--workers', '2']);
    const reading = readScenario(queueScenario(), queue);
    if (reading.kind === 'problems') throw new Error('The scenario is wrong.');
    const outcome = await runStudy(reading.lab, reading.settings, createInProcessExecutor());
    if (outcome.kind === 'too few') throw new Error(outcome.reason);
    expect(parseResults(stdout)).toMatchObject(JSON.parse(JSON.stringify(outcome.results)) as object);
  });

  it('writes nothing but the results to standard output for --json -', async () => {
    const { exitCode, stdout } = await buildweek(['run', queue, '--json', '-']);
    expect(exitCode).toBe(0);
    const results = parseResults(stdout);
    expect(results.scenario).toEqual({
      name: 'One server',
      text: queueScenario(),
      hash: createHash('sha256').update(queueScenario()).digest('hex'),
      files: [],
    });
    const { version } = JSON.parse(readFileSync(`${ROOT}/apps/cli/package.json`, 'utf8')) as {
      version: string;
    };
    expect(results.program).toEqual({ name: 'buildweek', version });
    expect(results.run).toMatchObject({ seed: 'queue', replications: 20, weeks: 1 });
  });

  it('lets an option stand above the scenario', async () => {
    const options = ['--replications', '30', '--weeks', '2', '--ignored-weeks', '1', '--seed', 'other'];
    const { stdout } = await buildweek(['run', queue, '--json', '-', '--queue-waits', ...options]);
    const results = parseResults(stdout);
    expect(results.run).toMatchObject({
      seed: 'other',
      replications: 30,
      weeks: 2,
      ignoredWeeks: { weeks: 1, method: 'given' },
    });
    expect(results.queues[0]?.waitPercentiles).toHaveLength(4);
  });

  it('prints the answer, tables and how it was found', async () => {
    const { exitCode, stdout } = await buildweek(['run', 'scenarios/small.yaml', '--replications', '40']);
    expect(exitCode).toBe(0);
    for (const title of ['Lead times', 'Where the hours go', 'People', 'Machines', 'Queues', 'Cautions']) {
      expect(stdout).toMatch(new RegExp(`^${title}`, 'm'));
    }
    expect(stdout).toMatch(/^The same by hand calculation/m);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(
      /- The simulation finds [^-]* for “bracket” where the formula says [^-]*: the formula knows no shifts, and about [\d.]+ days of the simulated time are waiting for a shift or a person\./,
    );
    expect(stdout).toMatch(/Nine of ten rush jobs are finished within/);
    expect(stdout).toContain('40 replications of 13 weeks, seed "corner"');
    expect(stdout).toContain('95\u00a0% confidence intervals');
  });

  it('warns of a load above 100 % with the number before anything is played', async () => {
    const { stderr } = await buildweek(['run', '-', '--json', '-'], queueScenario('', 210));
    expect(stderr).toContain('Warning: The load of server is 125 %');
  });

  it('ends with 3 when the precision is not reached, and keeps the results', async () => {
    const path = folder.file('imprecise.json');
    const precision = ['--precision', '0.1 % of p90 lead time', '--at-most', '20'];
    const { exitCode, stdout } = await buildweek(['run', queue, '--json', path, ...precision]);
    expect(exitCode).toBe(3);
    expect(stdout).toContain('The precision was NOT reached within 20 replications');
    expect(parseResults(readFileSync(path, 'utf8')).run).toMatchObject({
      stopped: 'limit reached',
      precision: { measure: 'p90 lead time of all jobs', asked: 0.001 },
    });
  });

  it('ends with 0 when the precision is reached', async () => {
    const { exitCode, stdout } = await buildweek(['run', queue, '--precision', '90 %']);
    expect(exitCode).toBe(0);
    expect(stdout).toContain('The precision was reached (p90 lead time of all jobs:');
  });

  it('overwrites nothing but its own results without being told to', async () => {
    const own = folder.file('own.json');
    expect((await buildweek(['run', queue, '--json', own])).exitCode).toBe(0);
    expect((await buildweek(['run', queue, '--json', own, '--seed', 'b'])).exitCode).toBe(0);
    expect(parseResults(readFileSync(own, 'utf8')).run.seed).toBe('b');
    const foreign = folder.write('notes.json', '{"mine": true}');
    const refused = await buildweek(['run', queue, '--json', foreign]);
    expect(refused).toMatchObject({ exitCode: 2, stdout: '' });
    expect(refused.stderr).toContain('--force');
    expect(readFileSync(foreign, 'utf8')).toBe('{"mine": true}');
    expect((await buildweek(['run', queue, '--json', foreign, '--force'])).exitCode).toBe(0);
    expect(parseResults(readFileSync(foreign, 'utf8')).run.seed).toBe('queue');
  });

  it('leaves no half-written file behind', async () => {
    const place = folder.write('a file', 'not a folder');
    const { exitCode, stderr } = await buildweek(['run', queue, '--json', `${place}/results.json`]);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('Cannot write');
    expect(readdirSync(folder.root).filter((name) => name.includes('.part'))).toEqual([]);
  });

  it.each([
    [['--replications', '19'], 'Give a whole number from 20'],
    [['--replications', 'many'], 'Give a whole number from 20'],
    [['--weeks', '0'], 'Give a whole number from 1'],
    [['--ignored-weeks', 'some'], 'or auto'],
    [['--precision', '5 % of luck'], 'p90 lead time'],
    [['--precision', '5 %', '--replications', '20'], 'cannot be used with'],
    [['--at-most', '40'], '--at-most limits the search for a precision'],
    [['--wekks', '3'], '--weeks'],
  ])('answers %j with what to write, and ends with 2', async (options, answer) => {
    const { exitCode, stdout, stderr } = await buildweek(['run', queue, ...options]);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(stderr).toContain(answer);
  });

  it('asks for 20 replications when a scenario says fewer', async () => {
    const text = queueScenario().replace('replications: 20', 'replications: 5');
    const { exitCode, stderr } = await buildweek(['run', '-'], text);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('Write "replications: 20" or more');
  });
});
