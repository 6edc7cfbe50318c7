import { readFileSync } from 'node:fs';
import { promiseAnswerSchema, resultsSchema } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

/** One technician and one bench; a job takes four hours. */
const BENCH = `buildweek: 1
name: a bench
starts: 2027-03-01
simulate: { weeks: 2, ignored weeks: 0, replications: 20, seed: bench }
hours: { day: { mon-fri: 08:00-16:00 } }
people: { technician: { hours: day, skills: hand work } }
routes: { sanded: [sand: { by: hand work, takes: 4 h per job, may pause: yes }] }
parts: { ring: { route: sanded } }
demand: { ring: { dates: [2027-03-01 09:00], promise: 2 working days } }
`;

/** Twelve jobs that are done, and three that stand in the lab on Wednesday noon. */
const LOG = [
  'received;part;qty;promised;finished;step',
  ...Array.from(
    { length: 12 },
    (_, day) => `2027-02-${day + 10} 09:00;ring;1;2027-02-26;2027-02-${day + 11} 10:00;`,
  ),
  '2027-03-01 10:00;ring;1;2027-03-04;;sand',
  '2027-03-02 11:00;ring;2;2027-03-05;;',
  // In the lab on Wednesday noon, and done when the log ends.
  '2027-03-03 09:30;ring;1;2027-03-05;2027-03-03 15:00;',
  '',
].join('\n');

let folder: Folder;
let scenario: string;

beforeAll(() => {
  folder = new Folder();
  scenario = folder.write('bench.yaml', BENCH);
});

afterAll(() => {
  folder.remove();
});

describe('A lab that starts from today', () => {
  it('promises from the open rows of its log, in the middle of a week', async () => {
    const log = folder.write('log.csv', LOG);
    const json = folder.file('promise.json');
    const { exitCode, stderr } = await buildweek([
      'promise',
      scenario,
      '--part',
      'ring',
      '--log',
      log,
      '--now',
      '2027-03-03 12:00',
      '--json',
      json,
    ]);
    expect(exitCode).toBe(0);
    expect(stderr).toContain('3 jobs of the log stand in the lab');
    const answer = promiseAnswerSchema.parse(JSON.parse(readFileSync(json, 'utf8')));
    expect(answer.now).toContain('2027-03-03 12:00');
    expect(answer.jobsInLab).toBe(3);
    // Twelve hours of work stand there: until 16:00 on Wednesday one job, on Thursday two, and this one on Friday at noon.
    expect(JSON.stringify(answer)).toContain('2027-03-05 12:00');
  });

  it('plays on from a backlog file, and tells mistakes in it by its own lines', async () => {
    const good = folder.write(
      'today.yaml',
      'now: 2027-03-03 12:00\njobs:\n  - { demand: ring, stage: sand }\n',
    );
    const json = folder.file('today.json');
    const run = await buildweek(['run', scenario, '--backlog', good, '--json', json]);
    expect({ exitCode: run.exitCode, stderr: run.stderr }).toEqual({
      exitCode: 0,
      stderr: expect.any(String),
    });
    const results = resultsSchema.parse(JSON.parse(readFileSync(json, 'utf8')));
    expect(results.lab.initialState).toMatchObject({ atHour: 60, jobs: [{ stage: 'sand' }] });
    const bad = folder.write('bad.yaml', 'now: 2027-03-03 12:00\njobs:\n  - { demand: ring, stage: snad }\n');
    const refused = await buildweek(['run', scenario, '--backlog', bad]);
    expect(refused.exitCode).toBe(2);
    expect(refused.stderr).toContain('bad.yaml:3:28: error: There is no stage of its route called "snad".');
  });

  it('refuses what goes not together', async () => {
    const log = folder.write('log.csv', LOG);
    for (const [options, told] of [
      [['--log', log, '--backlog', log], 'not both'],
      [['--now', '2027-03-03 12:00'], '--now goes with --log'],
      [['--log', log, '--now', 'yesterday'], 'is no moment'],
    ] as const) {
      const { exitCode, stderr } = await buildweek(['run', scenario, ...options]);
      expect(exitCode).toBe(2);
      expect(stderr).toContain(told);
    }
  });
});
