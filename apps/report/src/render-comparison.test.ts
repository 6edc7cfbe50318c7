import { comparisonFixture } from '@buildweek/charts/comparison-fixture';
import type { ComparisonAnswer } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { rowsOf, sectionIds, withoutData } from './fixture/page-parts.ts';
import { renderComparison } from './render-comparison.ts';

const answer = comparisonFixture();
const page = renderComparison(answer);

test('The first screen holds a sentence on each pair, and how sure the differences are together.', () => {
  const top = page.slice(0, page.indexOf('<main'));
  for (const { plan } of answer.pairs) expect(top).toContain(`“${plan}” against`);
  expect(top).toContain(
    'of differences 99.5\u00a0% each, so that all hold at once with 95\u00a0% confidence',
  );
  expect(top).toContain('200 replications of 13 weeks each');
});

test('Every pair has a section, and every section a link in the contents.', () => {
  const ids = sectionIds(page);
  expect(ids).toEqual(['pair-1', 'pair-2', 'hand', 'cautions', 'scenarios', 'origin']);
  expect([...page.matchAll(/<li><a href="#([^"]+)">/g)].map((match) => match[1])).toEqual(ids);
});

test('Every chart is on the page in both widths, with title and text alternative.', () => {
  for (const pattern of [/<figcaption /g, /class="picture wide"/g, /class="picture narrow"/g]) {
    expect(page.match(pattern)).toHaveLength(2);
  }
});

test('Every measure stands in the table with both values, the difference, the verdict and the gain.', () => {
  const [head, ...rows] = rowsOf(page, 'pair-1-table');
  expect(head?.slice(1, 3)).toEqual(['as it is', 'technicians / count: 3']);
  expect(rows).toHaveLength(5);
  expect(rows[0]).toEqual([
    'nine of ten jobs within, days',
    '6.1 (5.8 to 6.3)',
    '4.3 (4.1 to 4.5)',
    expect.stringMatching(/^[-−]1\.8 \([-−]2\.2 to [-−]1\.3\)$/),
    '▲ better',
    '12 times',
  ]);
  expect(rows[1]?.slice(3, 5)).toEqual(['+11 (8 to 14)', '▲ better']);
  expect(rows[2]?.[4]).toBe('less');
  expect(rows[3]?.slice(4)).toEqual(['▼ worse', '']);
});

test('What one plan never reaches is said, with the reason below, and is not compared.', () => {
  const row = rowsOf(page, 'pair-1-table')[5];
  expect(row?.[1]).toMatch(/^later than the plan ?1$/);
  expect(row?.[4]).toBe('not compared');
  const section = page.slice(page.indexOf('<section id="pair-1"'), page.indexOf('<section id="pair-2"'));
  expect(section).toContain('In 3 of 200 replications it lies beyond the end of what was played.');
});

test('What is the same in every replication is a plain nought.', () => {
  expect(rowsOf(page, 'pair-2-table')[3]?.slice(3, 5)).toEqual(['0', 'the same in every replication']);
});

test('The hand calculation has a column for each plan, and says where a resource is not there.', () => {
  const [head, row] = rowsOf(page, 'hand-table');
  expect(head).toEqual(['Resource', ...answer.plans.map(({ name }) => name)]);
  expect(row).toEqual(['technicians', '78 % of 2', '52 % of 3', '78 % of 2']);
  const plans = answer.plans.map((plan, index) => (index === 1 ? { ...plan, handCalculation: [] } : plan));
  expect(rowsOf(renderComparison({ ...answer, plans }), 'hand-table')[1]?.[2]).toBe('not there');
});

test('The plans are on the page in full, with what is changed in them.', () => {
  const scenarios = page.slice(page.indexOf('<section id="scenarios"'), page.indexOf('<section id="origin"'));
  expect(scenarios.match(/<details>/g)).toHaveLength(3);
  expect(scenarios).toContain('<li><bdi>technicians / count: 3</bdi></li>');
  expect(scenarios).toMatch(/<pre [^>]*><bdi>buildweek: 1/);
});

test('Ids are unique, and everything that refers to an id finds it.', () => {
  const ids = [...withoutData(page).matchAll(/ id="([^"]+)"/g)].map((match) => match[1] ?? '');
  expect(new Set(ids).size).toBe(ids.length);
  const references = [
    ...withoutData(page).matchAll(
      /(?:aria-labelledby|aria-describedby)="([^"]+)"|url\(#([^)]+)\)|href="#([^"]+)"/g,
    ),
  ];
  expect(references.filter((match) => !ids.includes(match[1] ?? match[2] ?? match[3] ?? ''))).toEqual([]);
});

test('The answer is embedded as it is, and the same answer gives the same page.', () => {
  const json = page.match(/<script type="application\/json" id="answer">(.*?)<\/script>/s)?.[1] ?? '';
  expect(JSON.parse(json)).toEqual(answer);
  expect(renderComparison(comparisonFixture())).toBe(page);
});

describe.each([
  ['an image with a handler', '<img src=x onerror=alert(1)>'],
  ['the end of a script element', '</script><script>alert(1)</script>'],
  ['the end of an attribute', '" onmouseover="alert(1)'],
  ['two hundred letters', 'w'.repeat(200)],
])('A name that is %s', (_, name) => {
  test('comes out as text', () => {
    const written = JSON.stringify(name).slice(1, -1);
    const renamed = JSON.parse(
      JSON.stringify(answer).replaceAll('as it is', written).replaceAll('technicians / count: 3', written),
    ) as ComparisonAnswer;
    const text = withoutData(renderComparison(renamed));
    expect(text).not.toMatch(/<img|<script|<[^>]* on[a-z]+="/);
    expect(text).toContain(name.replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;'));
  });
});
