import { expect, test } from 'vitest';
import { HOURS } from '../format.ts';
import { formatLength, formatPieces, formatSpread, MINUTES, spreadFigure } from './spread-words.ts';

test('A spread is written with its value, and vanishes where nothing spreads.', () => {
  expect(formatSpread({ typical: 7.42, low: 6.9, high: 8.6 }, HOURS)).toBe('7.4\u00a0h (6.9 to 8.6)');
  expect(formatSpread({ typical: 40, low: 40, high: 40 }, MINUTES)).toBe('40\u00a0min');
  expect(spreadFigure({ typical: 40, low: 40, high: 40 }, MINUTES).range).toBeNull();
});

test('Below an hour a length is told in minutes, and from a hundred hours on in whole ones.', () => {
  expect([0.1, 0.999, 1, 4.23, 62, 99.97, 1398.4].map(formatLength)).toEqual([
    '6\u00a0min',
    '1\u00a0h',
    '1\u00a0h',
    '4.2\u00a0h',
    '62\u00a0h',
    '100\u00a0h',
    '1\u202f398\u00a0h',
  ]);
});

test('One is a piece, more are pieces.', () => {
  expect([1, 20].map(formatPieces)).toEqual(['1\u00a0piece', '20\u00a0pieces']);
});
