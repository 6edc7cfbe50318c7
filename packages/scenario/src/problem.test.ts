import { describe, expect, it } from 'vitest';
import { formatProblem, type Problem } from './problem.ts';

const problem: Problem = {
  severity: 'error',
  file: 'lab.yaml',
  line: 12,
  column: 12,
  length: 2,
  sourceLine: '    takes: 20',
  message: '"20" has no unit.',
  found: '20',
  expected: 'a time with its unit',
  write: '20 min',
};

describe('a problem in a terminal', () => {
  it('shows the place, the line with a mark, what was found, what was expected and what to write', () => {
    expect(formatProblem(problem)).toBe(
      [
        'lab.yaml:12:12: error: "20" has no unit.',
        '  12 |     takes: 20',
        '     |            ^^',
        '  found:    20',
        '  expected: a time with its unit',
        '  write:    20 min',
      ].join('\n'),
    );
  });

  it('shows the part of a long line that is meant, with the mark still under it', () => {
    const sourceLine = `${'x'.repeat(300)}HERE${'y'.repeat(300)}`;
    const [, line = '', mark = ''] = formatProblem({ ...problem, sourceLine, column: 301, length: 4 }).split(
      '\n',
    );
    expect(line.length).toBeLessThan(130);
    expect(line.slice(mark.indexOf('^'), mark.lastIndexOf('^') + 1)).toBe('HERE');
  });

  it('lets no control character of the file reach the terminal', () => {
    const escapeCode = String.fromCharCode(27);
    const text = formatProblem({
      ...problem,
      sourceLine: `a${escapeCode}[31m\tb`,
      found: `${escapeCode}]0;title`,
    });
    expect(text).not.toContain(escapeCode);
    expect(text).toContain('a·[31m b');
  });
});
