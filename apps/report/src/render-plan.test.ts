import { createHash } from 'node:crypto';
import { planAnswerFixture } from '@buildweek/charts/plan-fixture';
import type { PlanAnswer } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { rowsOf, sectionIds, withoutData } from './fixture/page-parts.ts';
import { renderPlan } from './render-plan.ts';

const answer = planAnswerFixture();
const page = renderPlan(answer);

test('The first screen holds the answer in words, the question, what may vary, and how sure it is.', () => {
  const top = page.slice(0, page.indexOf('<main'));
  for (const words of [
    'Two technicians',
    'the cheapest of 60 plans that meets every target',
    answer.question,
    '<bdi>resin</bdi> 1 to 5 (today 2)',
    answer.promise,
  ]) {
    expect(top).toContain(words);
  }
});

test('Every sentence of the answer is on the page.', () => {
  const headline = ['one', 'two', 'three', 'four', 'five'].map((word) => `Sentence ${word}.`);
  const text = withoutData(renderPlan({ ...answer, headline }));
  const places = headline.map((sentence) => text.indexOf(sentence));
  expect(places[0]).toBeGreaterThan(0);
  expect(places).toEqual([...places].sort((one, other) => one - other));
});

test('Every section is on the page, in order, with a link in the contents.', () => {
  const ids = sectionIds(page);
  expect(ids).toEqual(['plans', 'targets', 'one-more', 'warnings', 'hand', 'cautions', 'origin', 'scenario']);
  expect([...page.matchAll(/<li><a href="#([^"]+)">/g)].map((match) => match[1])).toEqual(ids);
});

test('Every chart is on the page in both widths, with title and text alternative.', () => {
  for (const pattern of [/<figcaption /g, /class="picture wide"/g, /class="picture narrow"/g]) {
    expect(page.match(pattern)).toHaveLength(3);
  }
});

test('Every plan stands in the table with what it is, its cost, its time and what it reaches.', () => {
  const [head = [], ...rows] = rowsOf(page, 'plans-table');
  expect(rows).toHaveLength(answer.shown.length);
  expect(head).toContain('EUR a year');
  expect(rows[0]?.slice(1, 5)).toEqual(['The answer', '✓ meets every target', '174 950', '3 800']);
  expect(rows[1]?.slice(0, 3)).toEqual(['2: resin 2, technicians hours day', 'Today', '✗ misses a target']);
  expect(rows[1]?.at(-1)).toBe('misses “90 % of jobs within 3 days”');
  expect(rows[1]?.[5]).toBe('4.5 (4.3 to 4.8)');
  expect(rows[1]?.[6]).toBe('71 (70 to 72)');
});

test('One more and one fewer are held against the answer, measure by measure.', () => {
  const [head, ...rows] = rowsOf(page, 'one-more-table');
  expect(head).toEqual(['Change', 'EUR a year', 'nine of ten jobs within, days', 'jobs on time, points']);
  expect(rows.map((row) => row.slice(0, 2))).toEqual([
    ['one more of “technicians”', '+85 000'],
    ['one fewer of “resin”', '−2 700'],
  ]);
  expect(rows[0]?.[2]).toMatch(/^[-−]0\.7/);
});

test('The search says what was ruled out and why, what was played, and what was not.', () => {
  const origin = withoutData(page.slice(page.indexOf('<section id="origin"')));
  expect(rowsOf(origin, 'ruled-out-table')[1]).toEqual([
    'costs more than “budget at most 300000”',
    '4',
    'technicians 3, resin 5',
  ]);
  const looked = rowsOf(origin, 'looked-table').slice(1);
  expect(looked).toHaveLength(answer.looked.length);
  expect(looked[0]?.slice(2)).toEqual(['30', 'meets every target']);
  expect(looked[1]?.[3]).toBe('misses “90 % of jobs within 3 days”');
  expect(origin.replace(/\s+/g, ' ')).toContain('that more machines or people always help is not assumed');
  const used = answer.looked.reduce((sum, { replications }) => sum + replications, 0);
  for (const [term, value] of [
    ['Ruled out before anything was played', '4'],
    ['Dearer ones not looked at', '21'],
    ['Replications that decided', String(used).replace(/(?=\d{3}$)/, '\u202f')],
    ['Replications in all', '1\u202f240'],
  ]) {
    expect(origin).toContain(`<dt>${term}</dt><dd><bdi>${value}</bdi></dd>`);
  }
});

test('The hand calculation stands beside the answer, with how many of each it would have taken.', () => {
  const hand = page.slice(page.indexOf('<section id="hand"'), page.indexOf('<section id="cautions"'));
  expect(hand).toContain(answer.handSentence);
  expect(hand).toContain('<bdi>technicians</bdi> 2, <bdi>resin</bdi> (no number is enough)');
  expect(rowsOf(hand, 'hand-table')[1]?.slice(0, 2)).toEqual(['technicians', '2']);
});

test('Where nothing is stated of money no cost is on the page.', () => {
  const shown = answer.shown.map((plan) => ({ ...plan, committedCost: null, purchase: null }));
  const looked = answer.looked.map((plan) => ({ ...plan, committedCost: null }));
  const free = withoutData(renderPlan({ ...answer, currency: null, shown, looked, headline: [] }));
  expect(free).not.toMatch(/EUR|null|NaN|undefined/);
  expect(sectionIds(free)).toContain('plans');
});

test('Where no plan is good enough nothing is held against an answer, and the page still stands.', () => {
  const shown = answer.shown
    .filter(({ role }) => role !== 'chosen' && role !== 'one fewer')
    .map((plan) => ({ ...plan, againstChosen: [] }));
  const none = withoutData(renderPlan({ ...answer, chosen: null, shown, notLookedAt: 0 }));
  expect(sectionIds(none)).toEqual([
    'plans',
    'targets',
    'warnings',
    'hand',
    'cautions',
    'origin',
    'scenario',
  ]);
  expect(none).toContain('the plan that comes closest');
});

test('A time that is never reached says so, with the reason below the table.', () => {
  const reason = 'In 3 of 40 replications it lies beyond the end of what was played.';
  const shown = answer.shown.map((plan, index) => ({
    ...plan,
    measures: plan.measures.map((one, position) =>
      index === 1 && position === 0 ? { ...one, value: { kind: 'never', reason } as const } : one,
    ),
  }));
  const text = withoutData(renderPlan({ ...answer, shown }));
  expect(rowsOf(text, 'plans-table')[2]?.[5]).toMatch(/^later than the plan ?1$/);
  expect(text).toContain(reason);
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

test('The page forbids scripts and any network, and loads nothing from elsewhere.', () => {
  const policy = page.match(/<meta http-equiv="Content-Security-Policy" content="([^"]+)"/)?.[1] ?? '';
  const style = page.match(/<style>(.*?)<\/style>/s)?.[1] ?? '';
  const hash = createHash('sha256').update(style).digest('base64');
  expect(policy.replaceAll('&#39;', "'")).toContain(`default-src 'none'; style-src 'sha256-${hash}'`);
  expect(withoutData(page)).not.toMatch(/<script| style="| on[a-z]+="|(?:src|href)="(?!#)/);
});

test('The answer is embedded as it is, and the same answer gives the same page.', () => {
  const json = page.match(/<script type="application\/json" id="answer">(.*?)<\/script>/s)?.[1] ?? '';
  expect(JSON.parse(json)).toEqual(answer);
  expect(renderPlan(planAnswerFixture())).toBe(page);
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
      JSON.stringify(answer).replaceAll('technicians', written).replaceAll('90 % of jobs', written),
    ) as PlanAnswer;
    const text = withoutData(renderPlan(renamed));
    expect(text).not.toMatch(/<img|<script|<[^>]* on[a-z]+="/);
    expect(text).toContain(name.replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;'));
  });
});
