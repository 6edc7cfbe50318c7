import { staffAnswerFixture } from '@buildweek/charts/staff-fixture';
import type { StaffAnswer } from '@buildweek/results';
import { expect, test } from 'vitest';
import { withoutData } from './fixture/page-parts.ts';
import { renderStaff } from './render-staff.ts';

const answer = staffAnswerFixture();
const page = renderStaff(answer);

test('The page says the answer, where a person is missing, the options, hours and rules, and what to copy.', () => {
  const ids = [...page.matchAll(/<section id="([^"]+)"/g)].map(([, id]) => id);
  expect(ids).toEqual(['waiting', 'options', 'hours', 'hand', 'changes', 'cautions', 'origin']);
  const text = withoutData(page);
  for (const words of [
    'With the same hours, “one of technicians from 10:00” cuts the time',
    'Where a person is missing',
    'The numbers of the map: <bdi>today</bdi>',
    'With the same hours',
    'With more hours',
    'With fewer hours',
    'late technicians 1',
    'Monday 22:00 to Tuesday 06:00',
    'Cost, EUR a year',
    'is no statement about the law',
    'people / technicians / hours: { mon-fri: 10:00-18:00 }',
    'Nobody can do the hand work.',
  ]) {
    expect(text).toContain(words);
  }
});

test('Hours that break no rule are told so, and still nothing is said of the law.', () => {
  const kept = renderStaff({ ...answer, plans: answer.plans.map((plan) => ({ ...plan, breaches: [] })) });
  expect(kept).toContain('The hours of every person keep what they are held against');
  expect(kept).toContain('is no statement about the law');
});

test('The tables hold the 168 numbers of each map.', () => {
  const table = page.slice(page.indexOf('id="waiting-today"'), page.indexOf('id="waiting-other"'));
  expect(table.match(/<td class="number">/g)).toHaveLength(168);
});

test('The answer is embedded as it is, the same answer gives the same page, and nothing is loaded.', () => {
  const json = page.match(/<script type="application\/json" id="answer">(.*?)<\/script>/s)?.[1] ?? '';
  expect(JSON.parse(json)).toEqual(answer);
  expect(renderStaff(staffAnswerFixture())).toBe(page);
  const text = withoutData(page);
  expect(text).not.toMatch(/<script/);
  expect(text).not.toMatch(/(?:src|href)="(?!#)/);
});

test('Names come out as text.', () => {
  const name = '<img src=x onerror=alert(1)>';
  const before = JSON.stringify(answer)
    .replaceAll('one of technicians from 10:00', name)
    .replaceAll('hand work', name);
  const hostile = withoutData(renderStaff(JSON.parse(before) as StaffAnswer));
  expect(hostile).toContain('&lt;img src=x onerror=alert(1)&gt;');
  expect(hostile).not.toMatch(/<img/);
});
