import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { type ComparisonAnswer, comparisonAnswerSchema, type Results } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder, queueScenario, startBuildweek } from './buildweek.ts';

const PATIENCE = 120_000;
const FEW = ['--replications', '20', '--ignored-weeks', '1'];
const LAB = 'scenarios/small.yaml';

let folder: Folder;

beforeAll(() => {
  folder = new Folder();
});

afterAll(() => {
  folder.remove();
});

function answerIn(file: string): ComparisonAnswer {
  return comparisonAnswerSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
}

describe('buildweek compare', () => {
  it(
    'plays a change as if it stood in the file, and gives the same on any number of threads',
    async () => {
      const json = folder.file('comparison.json');
      const change = 'technician / count: 3';
      const { exitCode, stdout } = await buildweek([
        'compare',
        LAB,
        '--with',
        change,
        ...FEW,
        '--json',
        json,
      ]);
      expect(exitCode).toBe(0);
      expect(stdout).toMatch(/^“technician \/ count: 3” against “as it is”: /);
      const answer = answerIn(json);
      const changed = folder.file('changed.yaml');
      writeFileSync(changed, answer.plans[1]?.scenario.text ?? '');
      const { stdout: results } = await buildweek(['run', changed, ...FEW, '--json', '-']);
      const { jobs } = JSON.parse(results) as Results;
      const own = answer.plans[1]?.measures.find(({ name }) => name === 'jobs on time');
      expect(own?.value).toEqual(jobs[0]?.onTime);
      const again = await buildweek([
        'compare',
        LAB,
        '--with',
        change,
        ...FEW,
        '--json',
        '-',
        '--workers',
        '1',
      ]);
      expect(JSON.parse(again.stdout)).toEqual(answer);
    },
    PATIENCE,
  );

  it(
    'finds no difference at all between a lab and itself under another name',
    async () => {
      const { stdout } = await buildweek(['compare', LAB, '--with', 'name: another', ...FEW, '--json', '-']);
      const answer = comparisonAnswerSchema.parse(JSON.parse(stdout));
      expect(new Set(answer.pairs[0]?.differences.map(({ outcome }) => outcome))).toEqual(
        new Set(['no difference']),
      );
      expect(answer.pairs[0]?.sentence).toContain('nothing differs, in any replication');
    },
    PATIENCE,
  );

  it('answers a change that makes no sense with the place, and what to write', async () => {
    const slip = await buildweek(['compare', LAB, '--with', 'technisian / count: 3']);
    expect(slip.exitCode).toBe(2);
    expect(slip.stderr).toContain('technician / count');
    const wrong = await buildweek(['compare', LAB, '--with', 'technician / count: many']);
    expect(wrong.exitCode).toBe(2);
    expect(wrong.stderr).toMatch(/small\.yaml with “technician \/ count: many”:\d+:\d+: error: /);
    const alone = await buildweek(['compare', LAB]);
    expect(alone.exitCode).toBe(2);
    expect(alone.stderr).toContain('--with "people / technicians / count: 3"');
  });

  it('refuses fewer replications than an interval needs, also when the scenario asks for them', async () => {
    const scenario = folder.write(
      'few.yaml',
      queueScenario().replace('replications: 20', 'replications: 10'),
    );
    const few = await buildweek(['compare', scenario, '--with', 'server / count: 2']);
    expect(few).toMatchObject({ exitCode: 2, stdout: '' });
    expect(few.stderr).toContain('The scenario asks for 10 replications; an interval needs at least 20.');
  });

  it('hands on what is odd in a scenario', async () => {
    const scenario = folder.write('odd.yaml', `${queueScenario()}people: { clerk: { skills: [write] } }\n`);
    const odd = await buildweek(['compare', scenario, '--with', 'server / count: 2', '--json', '-']);
    expect(odd.exitCode).toBe(0);
    expect(odd.stderr).toMatch(/Warning: .*odd\.yaml:\d+:\d+: /);
    const { warnings } = comparisonAnswerSchema.parse(JSON.parse(odd.stdout));
    expect(warnings.length).toBeGreaterThan(0);
    expect(new Set(warnings).size).toBe(warnings.length);
  });

  it(
    'does not go on with what was played before a file changed that the scenario names',
    async () => {
      const times = folder.write('times.txt', '1\n2\n3\n');
      const scenario = folder.write(
        'measured.yaml',
        queueScenario('', 50)
          .replace('exponential mean 1 h per job', '"measured from times.txt, h per job"')
          .replace('weeks: 1,', 'weeks: 520,'),
      );
      const json = folder.file('measured.json');
      const all = [
        'compare',
        scenario,
        '--with',
        'server / count: 2',
        '--replications',
        '500',
        '--json',
        json,
      ];
      const { child, ended } = startBuildweek(all);
      const kept = `${json}.unfinished`;
      while (!existsSync(kept) || readFileSync(kept, 'utf8').split('\n').length < 4) {
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
      child.kill('SIGINT');
      const stopped = await ended;
      expect(stopped.exitCode).toBe(130);
      // What is to be typed is what was typed.
      expect(stopped.stderr).toContain('--with "server / count: 2" --replications 500 --json');
      writeFileSync(times, '1\n2\n4\n');
      const resumed = await buildweek([...all, '--resume']);
      expect(resumed.exitCode).toBe(2);
      expect(resumed.stderr).toContain('was left by another command, scenario, setting');
    },
    PATIENCE,
  );
});
