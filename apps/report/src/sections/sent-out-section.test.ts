import { resultsFixture } from '@buildweek/charts/fixture';
import type { Estimate, Results } from '@buildweek/results';
import { expect, test } from 'vitest';
import { sentOutSection } from './sent-out-section.ts';

function estimate(value: number): Estimate {
  return { kind: 'estimate', value, low: value * 0.9, high: value * 1.1, level: 0.95, replications: 200 };
}

const row = {
  part: null,
  jobs: 400,
  sentOut: 100,
  share: estimate(0.25),
  jobsPerWeek: estimate(5),
  partsPerWeek: estimate(20),
};

const sourceOf = (sentOut: Results['sentOut']): string =>
  sentOutSection({ ...resultsFixture(), sentOut }).source;

test('What is sent out is told for all jobs and by part, with intervals.', () => {
  const source = sourceOf([row, { ...row, part: 'cap <b>' }]);
  expect(source).toContain('All jobs');
  expect(source).toContain('cap &lt;b&gt;');
  expect(source).toContain('23 to 28');
});

test('A part without jobs has no share, and a note says why.', () => {
  expect(sourceOf([{ ...row, share: { kind: 'refused', reason: 'No job arrived.' } }])).toContain(
    'No job arrived.',
  );
});

test('A lab that sends nothing out has no section.', () => {
  expect(sourceOf([])).toBe('');
});
