import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { type PromiseAnswer, promiseAnswerSchema } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

const PATIENCE = 120_000;
const QUICK = ['--replications', '20'];

let folder: Folder;
/** The small lab with three jobs in it. */
let lab: string;

beforeAll(() => {
  folder = new Folder();
  lab = folder.file('lab.yaml');
  writeFileSync(
    lab,
    `${readFileSync(new URL('../../../scenarios/small.yaml', import.meta.url), 'utf8')}
at the start:
  jobs:
    - { demand: bracket, pieces: 4, stage: print, due: 2024-01-02 16:30 }
    - { demand: bracket, pieces: 2, stage: print, due: 2024-01-03 16:30, rush: yes }
`,
  );
});

afterAll(() => {
  folder.remove();
});

describe('buildweek promise', () => {
  it(
    'says for a part of the scenario when it is ready, what moves it, and what it does to the jobs in the lab',
    async () => {
      const json = folder.file('promise.json');
      const { exitCode, stdout, stderr } = await buildweek([
        'promise',
        lab,
        '--part',
        'bracket',
        '--quantity',
        '6',
        ...QUICK,
        '--json',
        json,
      ]);
      expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
      expect(stdout).toMatch(/^6 × bracket, by .*: promise \w+ \d+ January, closing time 16:30;/);
      expect(stdout).toContain('What moves it');
      expect(stdout).toContain('What taking it on does to the jobs in the lab');
      expect(stdout).toMatch(/with 2 jobs in the lab, 20 plays of what is to come/);
      const answer: PromiseAnswer = promiseAnswerSchema.parse(JSON.parse(readFileSync(json, 'utf8')));
      expect(answer.request?.effects.map(({ job }) => job).sort()).toEqual(['job 1', 'job 2']);
      expect(answer.request?.moves.map(({ what }) => what)).toContain('as a rush job');
    },
    PATIENCE,
  );

  it(
    'says the same for the same seed, on any number of threads',
    async () => {
      const play = (workers: string) =>
        buildweek(['promise', lab, '--part', 'bracket', ...QUICK, '--workers', workers, '--json', '-']);
      const [one, two] = [await play('1'), await play('2')];
      expect(one.exitCode).toBe(0);
      expect(two.stdout).toBe(one.stdout);
    },
    PATIENCE,
  );

  it(
    'answers for every job in the lab, says what to start before it closes, and writes a table and a calendar',
    async () => {
      const csv = folder.file('today.csv');
      const calendar = folder.file('today.ics');
      const all = ['promise', lab, '--all', ...QUICK, '--csv', csv, '--calendar', calendar];
      const { exitCode, stdout, stderr } = await buildweek(all);
      expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
      expect(stdout).toMatch(/one build to start, printer \d with job 1/);
      expect(stdout).toContain('To start, until the lab opens again');
      const written = readFileSync(csv, 'utf8');
      expect(written).toMatch(/^\ufeffjob,part,pieces/);
      expect(readFileSync(calendar, 'utf8')).toMatch(/^BEGIN:VCALENDAR\r\n/);
      // What it wrote itself it writes again, the same.
      expect((await buildweek(all)).exitCode).toBe(0);
      expect(readFileSync(csv, 'utf8')).toBe(written);
    },
    PATIENCE,
  );

  it('refuses --all where nothing stands in the lab', async () => {
    const { exitCode, stderr } = await buildweek(['promise', 'scenarios/small.yaml', '--all']);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('Nothing stands in the lab');
  });

  it.each([
    [['--part', 'leer'], 'There is no part "leer" in '],
    [[], 'What is asked for? Give --part NAME'],
    [['--part', 'bracket', '--mesh', 'x.stl'], 'Give one of --part, --mesh and --size'],
    [['--size', '60 x 40 x 30 mm'], 'A size needs a volume beside it'],
    [['--part', 'bracket', '--volume', '3 cm3'], '--volume and --surface go with --size'],
    [['--part', 'bracket', '--route', 'by hand'], 'There is no route "by hand" with a build'],
    [['--part', 'bracket', '--replications', '5'], 'Give a whole number from 20'],
  ])(
    'refuses %j',
    async (options, message) => {
      const json = folder.file('refused.json');
      const { exitCode, stdout, stderr } = await buildweek(['promise', lab, ...options, '--json', json]);
      expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
      expect(stderr).toContain(message);
      expect(existsSync(json)).toBe(false);
    },
    PATIENCE,
  );
});
