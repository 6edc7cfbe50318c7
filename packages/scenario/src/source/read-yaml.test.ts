import { describe, expect, it } from 'vitest';
import type { Problem } from '../problem.ts';
import { readYaml } from './read-yaml.ts';
import { toPlain } from './source-node.ts';
import { SourceText } from './source-text.ts';

function plain(text: string): unknown {
  const { root, problems } = readYaml(new SourceText('lab.yaml', text));
  expect(problems).toEqual([]);
  if (root === null) throw new Error('nothing was read');
  return toPlain(root);
}

function problems(text: string): readonly Problem[] {
  return readYaml(new SourceText('lab.yaml', text)).problems;
}

describe('a file in YAML', () => {
  it('gives groups, lists and values', () => {
    expect(plain('a: 1\nb: [x, 2027-03-01, yes]\nc:\n  - d: 07:00-11:30 12:00-15:30\n')).toEqual({
      a: 1,
      b: ['x', '2027-03-01', 'yes'],
      c: [{ d: '07:00-11:30 12:00-15:30' }],
    });
  });

  it('may put a value with commas into braces: words without a colon continue it', () => {
    expect(plain('a: { by: x, takes: 10 to 45 min per job, usually 20, people: 2 }')).toEqual({
      a: { by: 'x', takes: '10 to 45 min per job, usually 20', people: 2 },
    });
    expect(plain('a: { takes: measured 10, 12, 12, 30 min }')).toEqual({
      a: { takes: 'measured 10, 12, 12, 30 min' },
    });
    expect(plain('a: { takes: 1,5 h }')).toEqual({ a: { takes: '1,5 h' } });
    expect(plain('a: { takes: "x", usually }')).toEqual({ a: { takes: 'x', usually: null } });
  });

  it('writes out aliases and merge keys', () => {
    expect(plain('a: &a { x: 1, y: 2 }\nb: *a\nc: { <<: *a, y: 3 }\nd: { <<: [*a, { z: 4 }] }')).toEqual({
      a: { x: 1, y: 2 },
      b: { x: 1, y: 2 },
      c: { y: 3, x: 1 },
      d: { x: 1, y: 2, z: 4 },
    });
  });

  it('may start with a byte order mark and have any line ends', () => {
    expect(plain('\uFEFFa: 1\r\nb: 2\r\n')).toEqual({ a: 1, b: 2 });
    expect(problems('a: 1\r\n\tb: 2\r\n')[0]).toMatchObject({ line: 2, column: 1, sourceLine: '\tb: 2' });
  });

  it('may have names that are numbers, and keeps them as they are written', () => {
    expect(plain('007: a\n1.50: b')).toEqual({ '007': 'a', '1.50': 'b' });
  });

  it.each([
    ['tab', 'a:\n\tb: 1\n', 2, 1, 'A tab stands where the line is indented.', '  b: 1'],
    ['no space', 'a: 1\nname:x\nc: 2\n', 2, 1, 'A space is missing after the colon.', 'name: x'],
    [
      'open brace',
      'a: 1\nb: { c: { d: 1 }\ne: 2\n',
      2,
      4,
      'What is opened here is never closed by }.',
      'b: { c: { d: 1 } }',
    ],
    ['open bracket', 'a: [1, 2\nb: 1\n', 1, 4, 'What is opened here is never closed by ].', 'a: [1, 2]'],
    ['open quote', 'a: 1\nb: "c\n', 2, 4, 'What is opened here is never closed by ".', 'b: "c"'],
    ['colon in a value', 'a: b: c\n', 1, 4, 'This cannot be read as a key and its value.', 'a: "b: c"'],
    [
      'value and lines below',
      'a: 1\n  b: 2\n',
      1,
      4,
      'This cannot be read as a key and its value.',
      'a: "1"',
    ],
    [
      'wrong indent',
      'a:\n   b: 1\n  c: 2\n',
      3,
      1,
      'This line is indented differently from its neighbours.',
      'the line with as many spaces in front as the line above it that belongs to the same group',
    ],
    [
      'brackets in braces',
      'a: { t: measured [1, 2] min }\n',
      1,
      18,
      'This does not fit where it stands.',
      'a: { t: "measured [1, 2] min" }',
    ],
    ['reserved start', 'a: @b\n', 1, 4, 'This does not fit where it stands.', 'a: "@b"'],
    [
      'tag',
      'a: !b c\n',
      1,
      4,
      'A word that starts with ! is taken as a YAML type, which a scenario does not need.',
      'a: c',
    ],
    [
      'percent',
      '%a: 1\n',
      1,
      1,
      'A line that starts with % is taken as an instruction to the YAML reader.',
      '# a: 1',
    ],
    [
      'two documents',
      'a: 1\n---\nb: 2\n',
      2,
      1,
      'The file holds more than one document.',
      'each scenario into a file of its own, without the line "---"',
    ],
    [
      'duplicate key',
      'a: 1\nb: 2\na: 3\n',
      3,
      1,
      '"a" is there twice, first in line 1.',
      'the lines of both under one key, or another name',
    ],
    [
      'duplicate key in braces',
      'a: { b: 1, b: 2 }\n',
      1,
      12,
      '"b" is there twice, first in line 1.',
      'the lines of both under one key, or another name',
    ],
    ['unknown anchor', 'a: *b\n', 1, 4, 'There is no anchor &b above.', 'the value itself'],
    ['anchor in itself', 'a: &a [*a]\n', 1, 8, 'The anchor &a contains itself.', 'the value itself'],
    ['merge of a value', 'a: { <<: 3 }\n', 1, 6, 'The merge key << takes groups of keys.', '<<: *name'],
    ['list as a key', '? [a]\n: b\n', 1, 3, 'This cannot be a key or a name.', 'name: value'],
    ['empty key', '"": b\n', 1, 1, 'This cannot be a key or a name.', 'name: value'],
    ['prototype', '__proto__: b\n', 1, 1, 'This cannot be a key or a name.', 'name: value'],
  ])('with a mistake (%s) gets one message at the place', (_, text, line, column, message, write) => {
    const found = problems(text);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity: 'error', file: 'lab.yaml', line, column, message, write });
  });

  it('cannot blow up by aliases inside aliases', () => {
    const layers = ['a', 'b', 'c', 'd', 'e', 'f', 'g'];
    const text = layers
      .map((name, index) => {
        const inner = index === 0 ? 'x' : `*${layers[index - 1]}`;
        return `${name}: &${name} [${Array(10).fill(inner).join(', ')}]`;
      })
      .join('\n');
    const [problem, ...more] = problems(text);
    expect(more).toEqual([]);
    expect(problem?.message).toBe('With its aliases written out this file is too large.');
  });

  it('cannot be nested without end', () => {
    const found = problems(`a: ${'['.repeat(200)}${']'.repeat(200)}`);
    expect(found[0]?.message).toBe('With its aliases written out this file is too large.');
  });
});
