import { expect, test } from 'vitest';
import { textWidth } from '../text-width.ts';
import { wrapLines } from './wrap-lines.ts';

const PIECES = ['prepare 20 min', 'print 5.1 h', 'waits 14 h', 'sand 30 min'];

test('Everything that fits stands on one line.', () => {
  expect(wrapLines(PIECES, ' › ', 1000, 12)).toEqual([
    'prepare 20 min › print 5.1 h › waits 14 h › sand 30 min',
  ]);
});

test('Lines end between pieces, with the separator, and are no wider than their room.', () => {
  const lines = wrapLines(PIECES, ' › ', 170, 12);
  expect(lines).toEqual(['prepare 20 min › print 5.1 h ›', 'waits 14 h › sand 30 min']);
  for (const line of lines) expect(textWidth(line, 12)).toBeLessThanOrEqual(170);
});

test('A piece that is wider than the room has a line of its own.', () => {
  expect(wrapLines(['a very long piece indeed', 'b'], ' › ', 20, 12)).toEqual([
    'a very long piece indeed ›',
    'b',
  ]);
  expect(wrapLines([], ' › ', 20, 12)).toEqual([]);
});
