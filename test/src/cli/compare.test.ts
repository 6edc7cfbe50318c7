import { readFileSync, writeFileSync } from 'node:fs';
import { type ComparisonAnswer, comparisonAnswerSchema, type Results } from '@buildweek/results';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildweek, Folder } from './buildweek.ts';

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
});
