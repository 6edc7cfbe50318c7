import type { Estimate } from '@buildweek/results';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  DAYS,
  formatCount,
  formatEstimate,
  formatHourOfWeek,
  formatLevel,
  formatOrReason,
  formatPlain,
  formatShare,
  PERCENT,
  PLAIN,
  shareInWords,
  shorten,
  unnamed,
} from './format.ts';

function estimate(value: number, low: number, high: number): Estimate {
  return { kind: 'estimate', value, low, high, level: 0.95, replications: 30 };
}

test('An estimate is told in its unit with as many decimals as its interval deserves.', () => {
  expect(formatEstimate(estimate(98.4, 93.6, 103.2), DAYS)).toBe('4.1\u00a0days (3.9 to 4.3)');
  expect(formatEstimate(estimate(98.4, 97.9, 98.9), DAYS)).toBe('4.10\u00a0days (4.08 to 4.12)');
  expect(formatEstimate(estimate(0.762, 0.71, 0.81), PERCENT)).toBe('76\u00a0% (71 to 81)');
  expect(formatEstimate(estimate(24, 22, 26), DAYS)).toBe('1.0\u00a0day (0.9 to 1.1)');
  expect(formatEstimate(estimate(17, 12, 22), PLAIN)).toBe('17 (12 to 22)');
});

test('What is not given comes with its reason.', () => {
  expect(formatOrReason({ kind: 'refused', reason: 'too few jobs' }, DAYS)).toBe('not given: too few jobs');
  expect(formatOrReason({ kind: 'never', reason: '12 jobs unfinished' }, DAYS)).toBe(
    'beyond the end of the plan: 12 jobs unfinished',
  );
  expect(
    formatOrReason({ kind: 'prediction', low: 72, high: 120, level: 0.95, replications: 40 }, DAYS),
  ).toBe('3.0 to 5.0');
});

test('A plain number shows three digits that count and no empty decimals.', () => {
  expect([0, 0.124, 3.4, 12.04, 41.26, 268.7].map(formatPlain)).toEqual([
    '0',
    '0.12',
    '3.4',
    '12',
    '41.3',
    '269',
  ]);
});

test('An interval of which rounding leaves nothing is not written.', () => {
  expect(formatEstimate(estimate(14.4, 14.39, 14.41), DAYS)).toBe('0.60\u00a0days');
  expect(formatEstimate(estimate(1, 1, 1), PERCENT)).toBe('100\u00a0%');
});

test('Shares are whole percentages, with a decimal below ten.', () => {
  expect([0, 0.0512, 0.0996, 0.734, 1].map(formatShare)).toEqual([
    '0\u00a0%',
    '5.1\u00a0%',
    '10\u00a0%',
    '73\u00a0%',
    '100\u00a0%',
  ]);
});

test('Thousands are set apart.', () => {
  expect([7, 1234, 108212].map(formatCount)).toEqual(['7', '1\u202f234', '108\u202f212']);
});

test('Hours of the week are told by day and clock.', () => {
  expect(formatHourOfWeek(0)).toBe('Monday 00:00');
  expect(formatHourOfWeek(24 * 4 + 13)).toBe('Friday 13:00');
});

test('Shares of jobs have words.', () => {
  expect([0.5, 0.9, 0.7].map(shareInWords)).toEqual(['Half of', 'Nine of ten', '70 % of']);
});

test('A name that turns the direction of writing is kept apart from the words around it.', () => {
  expect(shorten('בית')).toBe('\u2068בית\u2069');
  expect(shorten('x\u202ey')).toBe('\u2068x\u202ey\u2069');
  expect(shorten('lens ring')).toBe('lens ring');
});

test('A shortened name is never longer than asked for and never cuts a letter in two.', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'grapheme', maxLength: 80 }),
      fc.integer({ min: 1, max: 60 }),
      (name, length) => {
        const short = shorten(name, length).replace(/[\u2068\u2069]/g, '');
        fc.pre(!/[\u2068\u2069]/.test(name));
        expect(Array.from(short).length).toBeLessThanOrEqual(Math.max(length, 1));
        expect(encodeURIComponent(short).length).toBeGreaterThanOrEqual(short.length);
        if (Array.from(name).length <= length) expect(short).toBe(name);
      },
    ),
  );
});

test('A confidence level that is no whole percentage is not told as certainty.', () => {
  expect([0.5, 0.95, 0.995].map(formatLevel)).toEqual(['50\u00a0%', '95\u00a0%', '99.5\u00a0%']);
});

test('A value whose unit stands in the heading keeps its decimals without it.', () => {
  expect(formatEstimate(estimate(98.4, 93.6, 103.2), unnamed(DAYS))).toBe('4.1 (3.9 to 4.3)');
});
