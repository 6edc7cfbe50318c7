import { createHash } from 'node:crypto';
import { resultsFixture } from '@buildweek/charts/fixture';
import type { Problem } from '@buildweek/scenario';
import { expect, test } from 'vitest';
import { renderReport } from '../render-report.ts';
import { renderProblems } from './render-problems.ts';
import { servedPage } from './served-page.ts';

const PROBLEM: Problem = {
  severity: 'error',
  file: 'lab.yaml',
  line: 7,
  column: 3,
  length: 4,
  sourceLine: '  <b>x: 1',
  message: 'This is no "key".',
  found: '<b>x',
  expected: 'a key',
  write: '',
};

test('A served page may run its own script and listen to where it came from, and nothing else.', () => {
  const page = servedPage(renderReport(resultsFixture()), 3);
  const policy = /Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1]?.replaceAll('&#39;', "'") ?? '';
  const script = /<script data-version="3">(.*?)<\/script>/s.exec(page)?.[1] ?? '';
  const hash = createHash('sha256').update(script).digest('base64');
  expect(policy.split('; ')).toEqual([
    "default-src 'none'",
    expect.stringMatching(/^style-src 'sha256-/),
    "base-uri 'none'",
    "form-action 'none'",
    `script-src 'sha256-${hash}'`,
    "connect-src 'self'",
  ]);
  expect(script.length).toBeGreaterThan(100);
});

test('What is wrong with a scenario stands with its place, as text.', () => {
  const page = renderProblems(
    '<i>.yaml',
    [PROBLEM, { ...PROBLEM, severity: 'warning', write: 'y: 1' }],
    '0.1.0',
  );
  expect(page).toContain('There is 1 error in this scenario.');
  expect(page).toContain('Line 7, column 3: This is no &quot;key&quot;.');
  expect(page).toContain('Line 7, column 3: warning: This is no &quot;key&quot;.');
  expect(page).toContain('  <mark>&lt;b&gt;x</mark>: 1');
  expect(page.match(/<dt>write<\/dt>/g)).toHaveLength(1);
  expect(page).not.toMatch(/<b>|<i>/);
});
