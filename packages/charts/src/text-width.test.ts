import { expect, test } from 'vitest';
import { fitName, textWidth } from './text-width.ts';

test('A line is as wide as its letters together.', () => {
  // Advance widths of "Ab 1" in the core font metrics: 667 + 556 + 278 + 556 thousandths.
  expect(textWidth('Ab 1', 10)).toBeCloseTo(20.57, 10);
});

test('Width grows with the font size and in bold.', () => {
  expect(textWidth('print', 26)).toBeCloseTo(2 * textWidth('print', 13), 10);
  expect(textWidth('print', 13, true)).toBeGreaterThan(textWidth('print', 13));
});

test('Letters outside ASCII are taken as wide, never as nothing.', () => {
  expect(textWidth('ä', 10)).toBeGreaterThanOrEqual(textWidth('a', 10));
  expect(textWidth('部', 10)).toBe(10);
  expect(textWidth('\u{1f600}', 10)).toBe(10);
});

test('Marks of direction take no room.', () => {
  expect(textWidth('\u2068ab\u202e\u2069', 10)).toBe(textWidth('ab', 10));
});

test('A name is cut to the room that there is, with the cut marked, and is whole when it fits.', () => {
  const long = 'W'.repeat(200);
  const cut = fitName(long, 100, 13);
  expect(textWidth(cut, 13)).toBeLessThanOrEqual(100);
  expect(textWidth(`W${cut}`, 13)).toBeGreaterThan(100);
  expect(cut.endsWith('…')).toBe(true);
  expect(fitName('lens ring', 100, 13)).toBe('lens ring');
});
