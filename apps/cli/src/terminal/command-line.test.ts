import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { commandLine } from './command-line.ts';

describe('a command to be copied', () => {
  it('has quotes where they are needed', () => {
    expect(commandLine(['growth', 'scenarios/demo.yaml', '--by', '4 % a month', '--resume'])).toBe(
      'buildweek growth scenarios/demo.yaml --by "4 % a month" --resume',
    );
  });

  it.each([
    ['a plain word', 'lab.yaml'],
    ['nothing', ''],
    ['changes', 'resin / count: 4; technicians / hours: { mon-fri: 10:00-18:00 }'],
    ['both quotes', `it's "so"`],
    ['what a shell would expand', '$HOME `date` !! \\ *'],
    ['lines', 'one\ntwo'],
  ])('means the same to a shell: %s', (_, word) => {
    const line = commandLine([word]).replace('buildweek', "printf '%s'");
    expect(execFileSync('sh', ['-c', line], { encoding: 'utf8' })).toBe(word);
  });
});
