import { existsSync, readFileSync } from 'node:fs';
import { parseResults } from '@buildweek/results';
import { afterAll, describe, expect, it } from 'vitest';
import { buildweek, type Ended, Folder, queueScenario, startBuildweek } from './buildweek.ts';

const folder = new Folder();
afterAll(() => folder.remove());

/** Runs an overloaded queue, whose warning tells that it has begun, and presses Ctrl-C a while after that. */
async function interrupted(options: readonly string[], afterMilliseconds: number): Promise<Ended> {
  const { child, said, ended } = startBuildweek(['run', '-', ...options], queueScenario('', 210));
  await said;
  await new Promise((resolve) => setTimeout(resolve, afterMilliseconds));
  child.kill('SIGINT');
  return ended;
}

describe('Ctrl-C', () => {
  it('ends a run with 130 and reports the replications that were finished, as a run of that many', async () => {
    const path = folder.file('stopped.json');
    let ended: Ended | null = null;
    // How much is finished after a while depends on the machine: the while doubles until it is enough.
    for (let pause = 1000; !existsSync(path) && pause < 60_000; pause *= 2) {
      ended = await interrupted(['--replications', '1000000', '--json', path], pause);
    }
    expect(ended?.exitCode).toBe(130);
    const stopped = parseResults(readFileSync(path, 'utf8'));
    const { replications } = stopped.run;
    expect(stopped.run.stopped).toBe('stopped by the user');
    expect(replications).toBeGreaterThanOrEqual(20);
    expect(ended?.stderr).toContain(`Stopped after ${replications} replications; these are reported.`);
    const whole = await buildweek(
      ['run', '-', '--json', '-', '--replications', String(replications)],
      queueScenario('', 210),
    );
    expect({ ...stopped, run: null }).toEqual({ ...parseResults(whole.stdout), run: null });
  });

  it('ends a run with 130 and nothing written when too few replications were finished', async () => {
    const path = folder.file('nothing.json');
    const ended = await interrupted(['--weeks', '200000', '--json', path], 0);
    expect(ended).toMatchObject({ exitCode: 130, stdout: '' });
    expect(ended.stderr).toContain('An interval needs at least 20 replications; 0 were finished.');
    expect(existsSync(path)).toBe(false);
  });
});
