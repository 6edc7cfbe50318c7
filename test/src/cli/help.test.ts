import { describe, expect, it } from 'vitest';
import { buildweek } from './buildweek.ts';

describe('the help of buildweek', () => {
  it('is what a plain buildweek prints, with lines to get going', async () => {
    const { exitCode, stdout, stderr } = await buildweek([]);
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' });
    for (const line of ['buildweek check scenarios/', 'buildweek run scenarios/', 'buildweek report ']) {
      expect(stdout).toContain(line);
    }
  });

  it.each([
    'check',
    'run',
    'report',
    'open',
    'compare',
    'how-many',
    'staff',
    'doubts',
    'growth',
    'away',
    'part',
    'calibrate',
    'typical-machines',
    'follow',
    'replay',
    'selfcheck',
    'schema',
  ])('of %s says what it does and gives an example', async (command) => {
    const { exitCode, stdout } = await buildweek([command, '--help']);
    expect(exitCode).toBe(0);
    expect(stdout).toContain(`Usage: buildweek ${command}`);
    expect(stdout).toMatch(new RegExp(`Examples?:\\n(.*\\n)* {2}buildweek ${command}\\b`));
  });

  it('of run names every exit code', async () => {
    const { stdout } = await buildweek(['run', '--help']);
    expect(stdout).toContain(
      'Exit codes: 0 done, 1 internal error, 2 bad input, 3 precision not reached, 130 stopped.',
    );
  });

  it('prints a version', async () => {
    expect(await buildweek(['--version'])).toMatchObject({
      exitCode: 0,
      stdout: expect.stringMatching(/^\d+\.\d+\.\d+\n$/),
    });
  });
});
