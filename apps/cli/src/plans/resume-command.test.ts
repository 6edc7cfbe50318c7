import { describe, expect, it } from 'vitest';
import { resumeCommand } from './resume-command.ts';

describe('What to type to go on', () => {
  it('is what was typed, with --resume, which stands there once', () => {
    expect(resumeCommand(['growth', 'lab.yaml', '--json', 'out/growth.json', '--resume'])).toBe(
      'buildweek growth lab.yaml --json out/growth.json --resume',
    );
  });

  it('has quotes around words with spaces, and sets off what means something to a shell', () => {
    expect(resumeCommand(['compare', 'lab.yaml', '--with', 'resin / count: 4', '--seed', 'a"$b'])).toBe(
      'buildweek compare lab.yaml --with "resin / count: 4" --seed "a\\"\\$b" --resume',
    );
  });
});
