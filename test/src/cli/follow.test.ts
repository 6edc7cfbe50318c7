import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createSimulator } from '@buildweek/core';
import { readScenario } from '@buildweek/scenario';
import { type JobStory, replayOf, slowestJobs } from '@buildweek/study';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { scenarioMeshes } from '../scenario-meshes.ts';
import { buildweek, Folder, ROOT } from './buildweek.ts';

const folder = new Folder();
const results = folder.file('weekend.json');
afterAll(() => folder.remove());

/** Two jobs for one printer over the weekend in which summer time begins; nothing is left to chance. */
const WEEKEND = `buildweek: 1
name: A weekend
starts: 2027-03-22
zone: Europe/Lisbon
simulate: { weeks: 2, ignored weeks: 0, replications: 20, seed: weekend }
hours:
  day: { mon-fri: 08:00-16:00 }
people:
  technician: { skills: run machines }
machines:
  printer: { set-up: 30 min, unload: 6 min }
routes:
  printed part:
    - build: { on: printer }
parts:
  bracket: { route: printed part, fits: 4 per build, print: 60 h per build }
demand:
  calm: { part: bracket, dates: [2027-03-26 09:00], pieces: 2, promise: 2 working days }
  urgent: { part: bracket, dates: [2027-03-26 10:00], promise: 48 h }
`;

beforeAll(async () => {
  const scenario = folder.write('weekend.yaml', WEEKEND);
  expect(await buildweek(['run', scenario, '--json', results])).toMatchObject({ exitCode: 0 });
});

/** Lines without the spaces that put them into columns. */
async function linesOf(...arguments_: string[]): Promise<string[]> {
  const { exitCode, stdout, stderr } = await buildweek(['follow', results, ...arguments_]);
  expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
  return stdout.split('\n').map((line) => line.trim().replace(/\s+/g, ' '));
}

describe('buildweek follow', () => {
  it('shows the week of a job as a page, with the same moments as its story', async () => {
    const page = folder.file('week.html');
    const { exitCode, stdout } = await buildweek(['follow', results, '1', '--page', page]);
    expect({ exitCode, stdout }).toEqual({
      exitCode: 0,
      stdout: `The page of week 1 is in ${page}. Open it in a browser.\n`,
    });
    const text = readFileSync(page, 'utf8');
    for (const told of ['The way of job 1', 'Sun 22:30', 'waits for the shift', 'printer 1, technician 1']) {
      expect(text).toContain(told);
    }
  });

  it('tells where a job was, what it waited for and how long, across a clock change', async () => {
    const lines = await linesOf('1');
    // Set-up from 9:00 to 9:30; 60 h later the clock, put forward on Sunday, shows 22:30; unloaded on Monday at 8:00.
    expect(lines).toEqual(
      expect.arrayContaining([
        'Job 1: 2 pieces of bracket',
        'Promised for Tue 30 Mar 16:00: kept, with 31.90 h to spare.',
        'Fri 26 Mar 09:00 arrives 2',
        'Fri 26 Mar 09:00 09:30 0.50 build: set-up printer 1 technician 1 2',
        'Fri 26 Mar 09:30 Sun 28 Mar 22:30 60.00 build: print printer 1 2',
        'Sun 28 Mar 22:30 Mon 29 Mar 08:00 9.50 waits for a shift, before build: unload 2',
        'Mon 29 Mar 08:00 08:06 0.10 build: unload printer 1 technician 1 2',
        'Mon 29 Mar 08:06 is finished 2',
        'work 60.60 86.4 %',
        'waits for a shift 9.50 13.6 %',
        'lead time 70.10 100.0 %',
      ]),
    );
  });

  it('says of a broken promise by how much', async () => {
    const lines = await linesOf('2');
    // Free at 8:06 on Monday, printed until Wednesday 20:36, unloaded on Thursday at 8:00.
    expect(lines).toEqual(
      expect.arrayContaining([
        'Promised for Sun 28 Mar 11:00: missed by 93.10 h.',
        'Fri 26 Mar 10:00 Mon 29 Mar 08:06 69.10 waits for a free machine or station, before build: set-up 1',
        'Thu 1 Apr 08:06 is finished 1',
        'lead time 141.10 100.0 %',
      ]),
    );
  });

  it('lists the slowest jobs without a job, with the command to follow one', async () => {
    const lines = await linesOf('--replication', '3');
    const rows = lines.filter((line) => /^\d+ bracket/.test(line));
    expect(rows).toEqual([
      '2 bracket 1 normal Fri 26 Mar 10:00 Thu 1 Apr 08:06 141.10 Sun 28 Mar 11:00 late by 93.10 h waits for a free machine or station, 69.10 h',
      '1 bracket 2 normal Fri 26 Mar 09:00 Mon 29 Mar 08:06 70.10 Tue 30 Mar 16:00 kept work, 60.60 h',
    ]);
    expect(lines).toContain(`Follow one of them with: buildweek follow ${results} 2 --replication 3`);
  });

  it('lists what every machine and person did in a week, in order of time', async () => {
    const lines = await linesOf('--week', '2');
    expect(lines).toEqual(
      expect.arrayContaining(['Week 2 of 2', 'Monday 29 March 2027', '08:00 16:00 technician 1 on duty']),
    );
    const from = lines.indexOf('Monday 29 March 2027');
    expect(lines.slice(from + 2, from + 7)).toEqual([
      '08:00 16:00 technician 1 on duty',
      '08:00 08:06 printer 1 technician 1 build: unload 1 2',
      '08:06 job is finished: bracket 1 2',
      '08:06 08:36 printer 1 technician 1 build: set-up 2 1',
      '08:36 Wed 31 Mar 20:36 printer 1 build: print 2 1',
    ]);
    const first = await linesOf('--week', '1');
    expect(first).toContain('09:30 Sun 28 Mar 22:30 printer 1 build: print 1 2');
    expect(first.some((line) => line.includes('29 March'))).toBe(false);
  });

  it('writes the same as JSON, to a file or to standard output', async () => {
    const { stdout } = await buildweek(['follow', results, '1', '--json', '-']);
    const story = JSON.parse(stdout);
    expect(story).toMatchObject({
      format: 'buildweek story',
      version: 1,
      kind: 'job',
      replication: 1,
      job: 1,
      promise: 'kept',
      hoursInLab: 70.1,
      hours: { beforePlan: 0, work: 60.6, waits: [{ cause: 'shift', hours: 9.5 }] },
    });
    expect(story.stretches[2]).toMatchObject({
      kind: 'work',
      stage: 'build',
      phase: 'print',
      unit: 'printer 1',
      from: { hours: 105.5, local: '2027-03-26T09:30' },
      to: { hours: 165.5, local: '2027-03-28T22:30' },
    });
    const file = folder.file('story.json');
    expect(await buildweek(['follow', results, '1', '--json', file])).toMatchObject({ exitCode: 0 });
    expect(readFileSync(file, 'utf8')).toBe(stdout);
    expect(await buildweek(['follow', results, '--week', '1', '--json', file])).toMatchObject({
      exitCode: 0,
    });
    expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({ kind: 'week', week: 1 });
  });

  it('overwrites nothing but a story, unless it is told to', async () => {
    const before = readFileSync(results, 'utf8');
    const { exitCode, stdout, stderr } = await buildweek(['follow', results, '1', '--json', results]);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(stderr).toContain('add --force to overwrite it');
    expect(readFileSync(results, 'utf8')).toBe(before);
  });

  it('prints no colours where there is no terminal', async () => {
    const { stdout } = await buildweek(['follow', results, '2']);
    expect(stdout).not.toContain('\u001b');
  });
});

describe('buildweek follow with what is not there', () => {
  const damaged = (change: (text: string) => string): string =>
    folder.write('damaged.json', change(readFileSync(results, 'utf8')));

  it.each([
    [['9'], 'There is no job 9 in replication 1: its jobs are numbered 1 to 2.'],
    [['1', '--replication', '21'], 'There is no replication 21 in'],
    [['--week', '3'], 'There is no week 3 in'],
    [['1', '--week', '1'], 'Name a job or a week, not both'],
    [['0'], 'Give a whole number from 1'],
    [['lever'], 'Give a whole number from 1'],
  ])('answers %j with what there is, and ends with 2', async (arguments_, message) => {
    const { exitCode, stdout, stderr } = await buildweek(['follow', results, ...arguments_]);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(stderr).toContain(message);
  });

  it.each([
    ['cut short', (text: string) => text.slice(0, 500), 'not a whole results document'],
    ['a later format', (text: string) => text.replace('"version": 3', '"version": 99'), 'has version 99'],
    [
      'written by another version',
      (text: string) => text.replace(/("name": "buildweek",\s*"version": ")[^"]*/, '$10.0.0'),
      'was written by buildweek 0.0.0',
    ],
    [
      'without a part that its lab speaks of',
      (text: string) =>
        text.replaceAll('"part": "bracket",\n    "arrivals"', '"part": "hinge",\n    "arrivals"'),
      'is damaged',
    ],
  ])('refuses results that are %s, and ends with 2', async (_, change, message) => {
    const path = damaged(change);
    expect(readFileSync(path, 'utf8')).not.toBe(readFileSync(results, 'utf8'));
    const { exitCode, stdout, stderr } = await buildweek(['follow', path, '1']);
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' });
    expect(stderr).toContain(message);
    expect(stderr).not.toContain('error of the program');
  });
});

describe('the stories of all jobs of the demo', () => {
  const reading = readScenario(
    readFileSync(join(ROOT, 'scenarios/demo.yaml'), 'utf8'),
    'demo.yaml',
    null,
    scenarioMeshes,
  );
  if (reading.kind === 'problems') throw new Error('The demo is not a scenario.');
  const { lab } = reading;
  const settings = { seed: 'spring', replication: 3, ignoredWeeks: 0, weeks: 13, capWeeks: 13 };
  const history = createSimulator(lab).simulate({ ...settings, trace: false, queueWaits: false });
  const replay = replayOf(
    lab,
    {
      ...settings,
      replications: 20,
      replicationLimit: 20,
      ignoredWeeks: { weeks: 0, method: 'given', note: '' },
      level: 0.95,
      stopped: 'number of replications reached',
      precision: null,
    },
    settings.replication,
  );
  const stories = slowestJobs(replay, 10_000);
  const finished = stories.filter(({ outcome }) => outcome === 'finished');

  it('have work and waits by cause that add up to the lead time, to the millisecond', () => {
    expect(finished.length).toBeGreaterThan(300);
    expect(finished.filter((story) => Math.abs(imbalance(story)) >= 1)).toEqual([]);
  });

  it('hold everything that can happen to a job', () => {
    const happened = new Set(stories.flatMap(({ stretches }) => stretches.map(({ what }) => what)));
    expect([...happened]).toEqual(
      expect.arrayContaining(['pauses', 'parts are rejected', 'job is revised', 'is broken off']),
    );
  });

  it('have the lead times and promises of the very replication that went into the results', () => {
    const leadTimes = finished.map(({ until, arrivedAt }) => until - arrivedAt).sort((a, b) => a - b);
    const played = history.jobClasses.flatMap((jobClass) => [...jobClass.leadTimes]).sort((a, b) => a - b);
    expect(leadTimes).toEqual(played);
    const kept = finished.filter(({ dueAt, until }) => dueAt !== null && until <= dueAt).length;
    expect(kept).toBe(history.jobClasses.reduce((sum, { onTime }) => sum + onTime, 0));
  });
});

/** Milliseconds by which what is told of a job misses its lead time. */
function imbalance({ hours, until, arrivedAt }: JobStory): number {
  const waits = hours.waits.reduce((sum, { milliseconds }) => sum + milliseconds, 0);
  return hours.beforePlan + hours.work + waits - (until - arrivedAt);
}
