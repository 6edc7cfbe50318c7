import { describe, expect, it } from 'vitest';
import { buildweek } from '../cli/buildweek.ts';
import { SCENARIO_FILES } from './scenario-files.ts';

describe('The results of any scenario', () => {
  it.each(SCENARIO_FILES)(
    'are the same on one, two and three workers: $name',
    async ({ path }) => {
      const options = ['--replications', '20', '--weeks', '3', '--ignored-weeks', '1', '--json', '-'];
      const play = (workers: string) => buildweek(['run', path, ...options, '--workers', workers]);
      const one = await play('1');
      expect(one.exitCode).toBe(0);
      expect(one.stdout.length).toBeGreaterThan(1000);
      for (const workers of ['2', '3']) expect((await play(workers)).stdout).toBe(one.stdout);
    },
    240_000,
  );
});
