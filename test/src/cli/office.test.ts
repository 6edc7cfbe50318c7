import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { decisionFixture } from '@buildweek/charts/decision-fixture';
import { afterAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

const folder = new Folder();
const decision = folder.write('decision.json', JSON.stringify(decisionFixture()));
afterAll(() => folder.remove());

const every = (name: string): string[] => [
  ...['--pdf', folder.file(`${name}.pdf`), '--slides', folder.file(`${name}.pptx`)],
  ...['--table', folder.file(`${name}.xlsx`), '--charts', folder.file(`${name} charts`)],
];

describe('buildweek report for the office', () => {
  it('writes what is asked for and no page, the same bytes again over its own files, and says where', async () => {
    const first = await buildweek(['report', decision, ...every('a')]);
    expect(first).toMatchObject({ exitCode: 0, stdout: '' });
    expect(first.stderr).toContain(`The PDF is in ${folder.file('a.pdf')}.`);
    expect(first.stderr).toContain('charts.json lists them.');
    expect(existsSync(folder.file('decision.html'))).toBe(false);
    const names = [
      'a.pdf',
      'a.pptx',
      'a.xlsx',
      'a charts/charts.json',
      'a charts/options.png',
      'a charts/options.svg',
    ];
    const before = names.map((name) => readFileSync(folder.file(name)));
    expect((await buildweek(['report', decision, ...every('a')])).exitCode).toBe(0);
    names.forEach((name, at) => {
      expect({ name, same: readFileSync(folder.file(name)).equals(before[at] ?? Buffer.of()) }).toEqual({
        name,
        same: true,
      });
    });
  }, 120_000);

  it('refuses, before it writes anything, to overwrite what it did not write, until it is told to', async () => {
    const foreign = [
      ['--pdf', folder.write('letter.pdf', '%PDF-1.7 letter')],
      ['--slides', folder.write('talk.pptx', 'PK talk')],
      ['--table', folder.write('list.csv', 'name,number\r\n')],
    ] as const;
    for (const [option, path] of foreign) {
      const before = readFileSync(path, 'utf8');
      const refused = await buildweek(['report', decision, option, path]);
      expect(refused.exitCode).toBe(2);
      expect(refused.stderr).toContain(`${path} is there already and is not`);
      expect(readFileSync(path, 'utf8')).toBe(before);
    }
    const charts = folder.file('own pictures');
    mkdirSync(charts);
    folder.write('own pictures/hours-by-part.svg', 'mine');
    const refused = await buildweek(['report', decision, '--charts', charts]);
    expect(refused.exitCode).toBe(2);
    expect(refused.stderr).toContain('Choose another folder, or add --force');
    expect(readdirSync(charts)).toEqual(['hours-by-part.svg']);
    expect((await buildweek(['report', decision, '--table', foreign[2][1], '--force'])).exitCode).toBe(0);
  });

  it.each([
    ['--table', 'numbers.txt', 'End it with .csv or .xlsx.'],
    ['--pdf', 'page.html', 'End it with .pdf.'],
    ['--slides', 'slides.pdf', 'End it with .pptx.'],
  ])('says how a file has to be named: %s %s', async (option, name, words) => {
    const { exitCode, stderr } = await buildweek(['report', decision, option, folder.file(name)]);
    expect(exitCode).toBe(2);
    expect(stderr).toContain(words);
    expect(existsSync(folder.file(name))).toBe(false);
  });

  it('has the same options where a decision is made', async () => {
    const { stdout } = await buildweek(['decide', '--help']);
    for (const option of ['--pdf <file>', '--slides <file>', '--charts <folder>', '--table <file>']) {
      expect(stdout).toContain(option);
    }
    const refused = await buildweek(['decide', 'scenarios/demo.yaml', '--pdf', folder.file('letter.pdf')]);
    expect(refused.exitCode).toBe(2);
  });
});
