import { existsSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

const folder = new Folder();
const results = folder.file('small.json');
beforeAll(async () => {
  const quick = ['--replications', '40', '--ignored-weeks', '2'];
  await buildweek(['run', 'scenarios/small.yaml', ...quick, '--json', results]);
}, 60_000);
afterAll(() => folder.remove());

describe('buildweek report', () => {
  it('makes one page of the results, beside them when it is not told where', async () => {
    const { exitCode, stdout } = await buildweek(['report', results]);
    const page = folder.file('small.html');
    expect({ exitCode, stdout }).toEqual({
      exitCode: 0,
      stdout: `The report is in ${page}. Open it in a browser.\n`,
    });
    const html = readFileSync(page, 'utf8');
    expect(html).toMatch(/^<!doctype html>/);
    expect(html).toContain('A small print corner');
    expect(html).toContain('Nine of ten rush jobs are finished within');
  });

  it('overwrites a report, and nothing else without being told to', async () => {
    const page = folder.file('page.html');
    expect((await buildweek(['report', results, '--output', page])).exitCode).toBe(0);
    expect((await buildweek(['report', results, '--output', page])).exitCode).toBe(0);
    const foreign = folder.write('letter.html', '<p>Dear all</p>');
    const refused = await buildweek(['report', results, '--output', foreign]);
    expect(refused).toMatchObject({ exitCode: 2, stdout: '' });
    expect(refused.stderr).toContain('is not a report that this command wrote');
    expect(readFileSync(foreign, 'utf8')).toBe('<p>Dear all</p>');
    expect((await buildweek(['report', results, '--output', foreign, '--force'])).exitCode).toBe(0);
  });

  it('says what is wrong with a file that is damaged or no results, and writes nothing', async () => {
    const half = folder.write('half.json', readFileSync(results, 'utf8').slice(0, 1000));
    const ended = await buildweek(['report', half]);
    expect(ended).toMatchObject({ exitCode: 2, stdout: '' });
    expect(ended.stderr).toContain('This is not a whole results document');
    expect(existsSync(folder.file('half.html'))).toBe(false);
    const scenario = await buildweek(['report', 'scenarios/small.yaml', '--output', folder.file('no.html')]);
    expect(scenario.exitCode).toBe(2);
    expect(scenario.stderr).toContain('Results are written by: buildweek run FILE --json RESULTS');
    expect(existsSync(folder.file('no.html'))).toBe(false);
  });

  it('says which version the results of another program version have', async () => {
    const other = folder.write(
      'other.json',
      readFileSync(results, 'utf8').replace('"version": 3', '"version": 7'),
    );
    const { exitCode, stderr } = await buildweek(['report', other]);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('has version 7; this program reads version 3');
  });
});

describe('buildweek schema', () => {
  it.each(['scenario', 'results', 'part', 'calibration'])(
    'prints the published schema of %s',
    async (document) => {
      const { exitCode, stdout } = await buildweek(['schema', document]);
      expect(exitCode).toBe(0);
      expect(JSON.parse(stdout)).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' });
    },
  );

  it('says which documents there are', async () => {
    const { exitCode, stderr } = await buildweek(['schema', 'lab']);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('scenario, results');
  });
});
