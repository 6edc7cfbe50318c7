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
      expect(stdout.replace(/\s+/g, ' ')).toMatch(/one build to start, printer \d with job 1/);
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

  it(
    'shows what follows from a build that is decided on',
    async () => {
      const json = folder.file('pinned.json');
      const pin = ['--pin', 'printer 3: job 1 at 12:00'];
      const { exitCode, stdout } = await buildweek([
        'promise',
        lab,
        '--all',
        ...QUICK,
        ...pin,
        '--json',
        json,
      ]);
      expect(exitCode).toBe(0);
      expect(stdout).toContain('Decided: printer 3 with job 1 from Mon 1 Jan 12:00 on');
      expect(stdout).toContain('What the decided builds do to the jobs in the lab');
      const { pinned } = promiseAnswerSchema.parse(JSON.parse(readFileSync(json, 'utf8')));
      expect(pinned?.builds).toMatchObject([{ machine: 'printer 3', jobs: ['job 1'], share: 1 }]);
    },
    PATIENCE,
  );

  it('says so where nothing stands in the lab', async () => {
    const { stdout } = await buildweek(['promise', 'scenarios/small.yaml', '--part', 'bracket', ...QUICK]);
    expect(stdout).toContain('Nothing stands in the lab by this scenario');
  });

  it('refuses --all where nothing stands in the lab', async () => {
    const { exitCode, stderr } = await buildweek(['promise', 'scenarios/small.yaml', '--all']);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('Nothing stands in the lab');
  });

  it.each([
    [['--part', 'leer'], 'There is no part "leer" in '],
    [[], 'What is asked for? Give --part NAME'],
    [['--part', 'bracket', '--mesh', 'x.stl'], 'Give one of --part, --mesh and --size'],
    [['--part', 'bracket', '--route', 'by hand'], 'There is no route "by hand" with a build'],
    [['--all', '--pin', 'printer 9: job 1 at 12:00'], 'There is no machine "printer 9"'],
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
