import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { replayAnswerSchema } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

const PATIENCE = 120_000;
const LAB = new URL('../../../scenarios/small.yaml', import.meta.url).pathname;
const QUICK = ['--replications', '39'];

let folder: Folder;
/** Requests of 16 weeks, each finished a day after it was asked for. */
let log: string;

/** A list of requests: three on every weekday at nine, ten and eleven. */
function requests(weeks: number, part: (index: number) => string = () => 'bracket'): string {
  const lines = ['Nr,Asked,Part,Qty,Finished'];
  const monday = Date.UTC(2026, 2, 2);
  for (let day = 0; day < 7 * weeks; day++) {
    if (day % 7 > 4) continue;
    for (const hour of [9, 10, 11]) {
      const asked = monday + day * 86_400_000 + hour * 3_600_000;
      const text = (time: number): string => new Date(time).toISOString().slice(0, 16).replace('T', ' ');
      const index = lines.length;
      lines.push(`${index},${text(asked)},${part(index)},${1 + (index % 5)},${text(asked + 86_400_000)}`);
    }
  }
  return `${lines.join('\n')}\n`;
}

beforeAll(() => {
  folder = new Folder();
  log = folder.file('requests.csv');
  writeFileSync(log, requests(16));
});

afterAll(() => {
  folder.remove();
});

describe('buildweek replay', () => {
  it(
    'plays the log, judges its last weeks, and says the same on any number of threads',
    async () => {
      const json = folder.file('replay.json');
      const page = folder.file('replay.html');
      const arguments_ = ['replay', LAB, log, ...QUICK];
      const { exitCode, stdout } = await buildweek([...arguments_, '--json', json, '--page', page]);
      expect(exitCode).toBe(0);
      expect(stdout).toMatch(/lies within what the model expects in \d+ of 5 weeks/);
      const answer = replayAnswerSchema.parse(JSON.parse(readFileSync(json, 'utf8')));
      // Every job took a day sharp, which no lab does.
      expect(answer.test.isContradicted).toBe(true);
      expect(answer.log).toMatchObject({ name: 'requests.csv', from: '2026-03-02', jobs: 225 });
      expect(answer.judged).toMatchObject({ from: '2026-05-11', weeks: 5 });
      expect(answer.scenario.text).toContain('starts: 2026-03-02');
      expect(readFileSync(page, 'utf8')).toContain('does the model do what the lab did?');
      const again = await buildweek([...arguments_, '--workers', '1', '--json', '-']);
      expect(JSON.parse(again.stdout)).toEqual(answer);
    },
    PATIENCE,
  );

  it.each([
    [
      'three rows',
      () => requests(16).split('\n').slice(0, 4).join('\n'),
      [],
      'only 3 rows below the headings',
    ],
    [
      'parts that nobody knows',
      () => requests(16, () => 'gadget'),
      [],
      'which of its parts that is ("bracket")',
    ],
    ['no table', () => 'nothing\n', [], 'nothing was done'],
    [
      'weeks that the log has not got',
      () => requests(16),
      ['--judged-from', '2027-01-04'],
      'at least 4 are needed',
    ],
    ['a day that is none', () => requests(16), ['--judged-from', '2026-02-30'], 'Give a day as 2026-10-04'],
    ['too few replications', () => requests(16), ['--false-alarms', '1 %'], 'Give --replications 99'],
  ])(
    'refuses %s, with what to do, and writes nothing',
    async (_, text, more, words) => {
      const bad = folder.file('bad.csv');
      writeFileSync(bad, text());
      const json = folder.file('bad.json');
      const { exitCode, stdout, stderr } = await buildweek([
        'replay',
        LAB,
        bad,
        ...QUICK,
        ...more,
        '--json',
        json,
      ]);
      expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
      expect(stderr).toContain(words);
      expect(existsSync(json)).toBe(false);
    },
    PATIENCE,
  );
});
