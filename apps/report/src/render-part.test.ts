import { createHash } from 'node:crypto';
import { partAnswerFixture } from '@buildweek/charts/part-fixture';
import type { PartAnswer } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { sectionIds, tagsOf, withoutData } from './fixture/page-parts.ts';
import { renderPart } from './render-part.ts';

const answer = partAnswerFixture();
const page = renderPart(answer);

/** The answer with a name in place of everything that the lab or the file of the part may name. */
function renamed(name: string): PartAnswer {
  const kept = new Set(['format', 'program', 'phase', 'kind', 'process', 'asked', 'label']);
  const rename = (value: unknown): unknown => {
    if (typeof value === 'string') return name;
    if (Array.isArray(value)) return value.map(rename);
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, inner]) => [
        key,
        kept.has(key) && typeof inner !== 'object' ? inner : rename(inner),
      ]),
    );
  };
  return rename(answer) as PartAnswer;
}

test('The first screen holds the question, the answer and the chart that shows why.', () => {
  const top = page.slice(0, page.indexOf('<main'));
  const places = [
    'Which process for the <bdi>bracket</bdi>?',
    answer.verdict[0] ?? 'no verdict',
    answer.verdict[1] ?? 'no verdict',
    '<figcaption id="first-choice">',
  ].map((words) => top.indexOf(words));
  expect(places).toEqual([...places].sort((one, other) => one - other));
  expect(places[0]).toBeGreaterThan(0);
});

test('Every sentence of the answer is on the page once, the later ones below the chart.', () => {
  const verdict = ['one', 'two', 'three', 'four', 'five'].map((word) => `Sentence ${word}.`);
  const long = withoutData(renderPart({ ...answer, verdict }));
  const places = verdict.map((sentence) => long.indexOf(sentence));
  expect(places).toEqual([...places].sort((one, other) => one - other));
  const chart = long.indexOf('<figcaption id="first-choice">');
  expect(places.map((place) => place > chart)).toEqual([false, false, false, true, true]);
});

test('Every section is on the page, in order, with a link in the contents.', () => {
  const ids = sectionIds(page);
  expect(ids).toEqual([
    'timelines',
    'hours-of-a-part',
    'minutes-of-a-part',
    'quantities',
    'fit',
    'impossible',
    'measured',
    'cautions',
    'assumptions',
    'origin',
  ]);
  expect([...page.matchAll(/<li><a href="#([^"]+)">/g)].map((match) => match[1])).toEqual(ids);
});

test('Every chart is on the page in both widths, with title and text alternative.', () => {
  for (const pattern of [
    /<figcaption /g,
    /class="picture wide"/g,
    /class="picture narrow"/g,
    /<summary>The same in words<\/summary>/g,
  ]) {
    expect(page.match(pattern)).toHaveLength(4);
  }
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

test('The numbers stand in the tables with their spread.', () => {
  const quantities = page.match(/<table[^>]*>\s*<caption id="quantities-table">.*?<\/table>/s)?.[0] ?? '';
  expect(quantities.match(/<tr>/g)).toHaveLength(1 + answer.ways.length * 4);
  expect(quantities).toContain('asked for on Friday\u00a015:00');
  expect(quantities).toContain('5.2 <span class="interval">4.7 to 6.5</span>');
});

test('The page says how the part stands, what fits, what was found, what is impossible, and what was assumed.', () => {
  for (const words of [
    'flat: the lowest height, and so the fewest layers',
    '64 × 42 × 28',
    'The mesh is closed: 1 284 triangles, no open edges.',
    '42 mm is higher than the 40 mm of “laser resin printers”',
    'Smooth finish: sanded by hand on every outer face, 30 min a piece.',
    'Site fire rules decide whether they may.',
  ]) {
    expect(withoutData(page)).toContain(words);
  }
});

test('The page says that the lab is empty, that nothing goes wrong, and that the hours are a floor.', () => {
  const origin = page.slice(page.indexOf('<section id="origin"')).replace(/\s+/g, ' ');
  for (const words of [
    'The lab is empty',
    'nothing goes wrong',
    'the hours are a floor',
    'one play in ten',
  ]) {
    expect(origin).toContain(words);
  }
});

test('Overtakings that some plays never see are told so; without any the page says that there is none.', () => {
  const [overtaking] = answer.overtakings;
  if (overtaking === undefined) throw new Error('The fixture has no overtakings.');
  const never = renderPart({ ...answer, overtakings: [{ ...overtaking, high: null }] });
  expect(never).toContain('<td class="number">not at all</td>');
  expect(renderPart({ ...answer, overtakings: [] })).toContain('No way overtakes another');
});

test('Where nothing can make the part the page says why, and draws nothing.', () => {
  const none = renderPart({ ...answer, ways: [], overtakings: [] });
  expect(sectionIds(none)).toEqual(['impossible', 'measured', 'cautions', 'assumptions', 'origin']);
  expect(none).not.toContain('<figure>');
});

test('The page forbids scripts and any network, holds no code, and loads nothing from elsewhere.', () => {
  const policy = page.match(/<meta http-equiv="Content-Security-Policy" content="([^"]+)"/)?.[1] ?? '';
  const style = page.match(/<style>(.*?)<\/style>/s)?.[1] ?? '';
  const hash = createHash('sha256').update(style).digest('base64');
  expect(policy.replaceAll('&#39;', "'")).toBe(
    `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`,
  );
  const text = withoutData(page);
  expect(text).not.toMatch(/<script/);
  expect(text).not.toMatch(/ style="/);
  expect(text).not.toMatch(/ on[a-z]+="/);
  expect(text).not.toMatch(/(?:src|href)="(?!#)/);
  expect(text.replaceAll('xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(/https?:\/\//);
});

test('The answer is embedded as it is, and the same answer gives the same page.', () => {
  const json = page.match(/<script type="application\/json" id="answer">(.*?)<\/script>/s)?.[1] ?? '';
  expect(JSON.parse(json)).toEqual(answer);
  expect(renderPart(partAnswerFixture())).toBe(page);
});

describe.each([
  ['an image with a handler', '<img src=x onerror=alert(1)>'],
  ['the end of a script element', '</script><script>alert(1)</script>'],
  ['the end of an attribute', '" onmouseover="alert(1)'],
  ['right-to-left writing', 'בית דפוס \u202e<b>'],
  ['two hundred letters', 'w'.repeat(200)],
])('A name that is %s', (_, name) => {
  test('comes out as text', () => {
    const hostile = renderPart(renamed(name));
    const escaped = name
      .replace(/&/g, '&amp;')
      .replace(/</g, '&lt;')
      .replace(/>/g, '&gt;')
      .replace(/"/g, '&quot;');
    expect(hostile).toContain(escaped);
    expect([...tagsOf(withoutData(hostile))].filter((tag) => !tagsOf(withoutData(page)).has(tag))).toEqual(
      [],
    );
    expect(withoutData(hostile)).not.toMatch(/<[^>]* on[a-z]+="/);
  });
});
