import { DAYS } from '@buildweek/charts';
import { resultsFixture } from '@buildweek/charts/fixture';
import { expect, test } from 'vitest';
import { html } from './html.ts';
import { Reasons } from './reasons.ts';
import { estimateCell, onePeriod, predictionCell } from './words.ts';

const { run } = resultsFixture();

test('Thirteen weeks are a quarter; other periods are told in weeks.', () => {
  expect([13, 1, 26].map((weeks) => onePeriod({ ...run, weeks }))).toEqual([
    'one quarter',
    'one period of 1 week',
    'one period of 26 weeks',
  ]);
});

test('A cell shows the number and its interval, with the unit where no heading says it.', () => {
  const estimate = {
    kind: 'estimate',
    value: 98.4,
    low: 93.6,
    high: 103.2,
    level: 0.95,
    replications: 40,
  } as const;
  expect(html`${estimateCell(estimate, DAYS)}`.source).toBe('4.1 <span class="interval">3.9 to 4.3</span>');
  expect(html`${estimateCell(estimate, DAYS, { spoken: true })}`.source).toBe(
    '4.1\u00a0days <span class="interval">3.9 to 4.3</span>',
  );
});

test('A cell whose interval vanishes in rounding shows the number alone.', () => {
  const sure = {
    kind: 'estimate',
    value: 14.4,
    low: 14.39,
    high: 14.41,
    level: 0.95,
    replications: 40,
  } as const;
  expect(estimateCell(sure, DAYS)).toBe('0.60');
});

test('A cell without a number says why, or where the reason stands.', () => {
  const refused = { kind: 'refused', reason: 'too few jobs' } as const;
  const never = { kind: 'never', reason: '9 jobs unfinished' } as const;
  expect(html`${estimateCell(refused, DAYS)}`.source).toContain('not given: too few jobs');
  const reasons = new Reasons();
  expect(html`${predictionCell(refused, DAYS, { reasons })}`.source).toContain('not given<sup>1</sup>');
  expect(html`${predictionCell(never, DAYS, { reasons })}`.source).toContain(
    'later than the plan<sup>2</sup>',
  );
});
