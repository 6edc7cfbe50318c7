import { createHash } from 'node:crypto';
import { resultsFixture } from '@buildweek/charts/fixture';
import type { Results } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { tagsOf, withoutData } from './fixture/page-parts.ts';
import { renderReport } from './render-report.ts';

const results = resultsFixture();
const page = renderReport(results);

/** The results with a name in place of everything that the scenario may name. */
function renamed(name: string): Results {
  const kept = new Set([
    ...[
      'format',
      'program',
      'run',
      'startDate',
      'kind',
      'priority',
      'phase',
      'cause',
      'state',
      'process',
      'law',
    ],
    ...['source', 'move', 'level', 'basis', 'unit', 'where', 'order', 'fitOn'],
  ]);
  const rename = (value: unknown): unknown => {
    if (typeof value === 'string') return name;
    if (Array.isArray(value)) return value.map(rename);
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, inner]) => [key, kept.has(key) ? inner : rename(inner)]),
    );
  };
  return {
    ...(rename(results) as Results),
    scenario: { name, text: name, hash: results.scenario.hash, files: [] },
  };
}

test('The page opens with the answer in words, before anything else is said of the lab.', () => {
  const [first, second] = results.headline;
  const answer = page.indexOf(`<p class="answer short"><bdi>${first}</bdi></p>`);
  expect(answer).toBeGreaterThan(0);
  expect(page.indexOf(`<li><bdi>${second}</bdi></li>`)).toBeGreaterThan(answer);
  expect(page.indexOf('<main')).toBeGreaterThan(answer);
});

test('Every section that the results have something for is on the page, in order.', () => {
  const ids = [...page.matchAll(/<section id="([^"]+)"/g)].map((match) => match[1]);
  expect(ids).toEqual([
    'targets',
    'key-numbers',
    'warnings',
    'lead-times-section',
    'hours',
    'cautions',
    'people',
    'machines',
    'builds',
    'stations',
    'trouble',
    'money',
    'queues',
    'weeks',
    'hand',
    'assumptions',
    'origin',
    'scenario',
    'words',
  ]);
});

test('Lead times by hand stand beside the simulated ones, with the reason where they differ much.', () => {
  expect(page).toContain('Lead time by hand calculation beside the simulated mean');
  expect(page).toContain('<li>The simulation finds 2.9 days (2.8 to 3.0) for an average job');
  expect(page).toContain('resin is asked for 104 % of the hours there are.');
});

test('Every section has a link in the contents, and every link leads to a section.', () => {
  const links = [...page.matchAll(/<li><a href="#([^"]+)">/g)].map((match) => match[1]);
  const ids = [...page.matchAll(/<section id="([^"]+)"/g)].map((match) => match[1]);
  expect(links).toEqual(ids);
});

test('Every chart is on the page in both widths, with title and text alternative.', () => {
  expect(page.match(/<figcaption /g)?.length).toBe(15);
  expect(page.match(/class="picture wide"/g)?.length).toBe(15);
  expect(page.match(/class="picture narrow"/g)?.length).toBe(15);
  expect(page.match(/<summary>The same in words<\/summary>/g)?.length).toBe(15);
});

test('Ids are unique, and everything that refers to an id finds it.', () => {
  const ids = [...withoutData(page).matchAll(/ id="([^"]+)"/g)].map((match) => match[1] ?? '');
  expect(new Set(ids).size).toBe(ids.length);
  const references = [
    ...withoutData(page).matchAll(/(?:aria-labelledby|aria-describedby)="([^"]+)"|url\(#([^)]+)\)/g),
  ];
  expect(references.filter((match) => !ids.includes(match[1] ?? match[2] ?? ''))).toEqual([]);
});

test('The numbers of the results stand in the tables with their intervals.', () => {
  expect(page).toContain('4.8\u00a0days <span class="interval">4.7 to 5.0</span>');
  expect(page).toContain('3.8 to 6.5\u00a0days');
  expect(page).toContain('93\u00a0% <span class="interval">92 to 94</span>');
});

test('The page says how it was computed: seed, replications, ignored weeks, version, hash, laws.', () => {
  for (const words of [
    'buildweek 0.1.0',
    'spring',
    '200 of at most 1000; ended because: precision reached',
    '3, chosen by MSER. From a pilot of 52 weeks and 20 replications.',
    results.scenario.hash,
    'Little&#39;s law',
    'machines / resin / warm-up',
    'default of a machine class',
    'stated in the scenario, line 4',
    'The load of technicians is above 70 %.',
    'Site fire rules decide whether they may.',
  ]) {
    expect(page).toContain(words);
  }
});

test('Warnings stand directly under the key numbers.', () => {
  expect(page).toMatch(/<section id="warnings"/);
  const between = page.slice(
    page.indexOf('<section id="key-numbers"'),
    page.indexOf('<section id="warnings"'),
  );
  expect(between.match(/<section/g)).toHaveLength(1);
});

test('The top of the page leads to the cautions where nobody or only one person is there, and only then.', () => {
  const link = /<p class="beware">.*?<a href="#cautions">/s;
  expect(page.slice(0, page.indexOf('<main'))).toMatch(link);
  const attended = results.cautions.filter(({ topic }) => topic !== 'Unattended running');
  expect(renderReport({ ...results, cautions: attended })).not.toMatch(link);
});

test('Key numbers of a lab that does not keep up are of these weeks, and not of the long run.', () => {
  const { jobsInLab } = results.flow;
  const grown = jobsInLab.value.map((value, week) => value * (1 + week / 4));
  const band = {
    ...jobsInLab,
    value: grown,
    low: grown.map((value) => value - 0.5),
    high: grown.map((value) => value + 0.5),
  };
  const growing = renderReport({ ...results, flow: { ...results.flow, jobsInLab: band } });
  const keyNumbers = (text: string): string =>
    text.match(/<section id="key-numbers".*?<\/section>/s)?.[0] ?? '';
  expect(keyNumbers(page)).toContain('In the long run');
  expect(keyNumbers(growing)).toContain('In these weeks');
  expect(keyNumbers(growing)).not.toContain('long run');
});

test('Processes are spelled out once, and replications are explained.', () => {
  expect(withoutData(page).match(/material extrusion \(MEX\)/g)).toHaveLength(1);
  expect(page).toMatch(
    /200 times with fresh luck each time \(200 <button [^>]*popovertarget="term-replications">replications<\/button>\)/,
  );
  expect(page.match(/<div popover id="term-replications"/g)).toHaveLength(1);
});

test('Differences that are rounding are told as none.', () => {
  const checks = results.checks.map((check) => ({ ...check, largestDifferenceHours: 4.238552517361111e-12 }));
  const text = renderReport({ ...results, checks });
  expect(withoutData(text)).not.toContain('e-12');
  expect(text).toMatch(/<table[^>]*>\s*<caption id="laws-table">.*?<td class="number">none<\/td>/s);
});

test('The page forbids scripts and any network, and allows its own style sheet by hash.', () => {
  const policy = page.match(/<meta http-equiv="Content-Security-Policy" content="([^"]+)"/)?.[1] ?? '';
  const style = page.match(/<style>(.*?)<\/style>/s)?.[1] ?? '';
  const hash = createHash('sha256').update(style).digest('base64');
  expect(policy.replaceAll('&#39;', "'")).toBe(
    `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`,
  );
});

test('The page holds no code, no style attributes, and nothing that is loaded from elsewhere.', () => {
  const text = withoutData(page);
  expect(text).not.toMatch(/<script/);
  expect(text).not.toMatch(/ style="/);
  expect(text).not.toMatch(/ on[a-z]+="/);
  expect(text).not.toMatch(/(?:src|href)="(?!#)/);
  expect(text.replaceAll('xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(/https?:\/\//);
});

test('The results are embedded as they are.', () => {
  const json = page.match(/<script type="application\/json" id="results">(.*?)<\/script>/s)?.[1] ?? '';
  expect(JSON.parse(json)).toEqual(results);
});

test('The same results give the same page.', () => {
  expect(renderReport(resultsFixture())).toBe(page);
});

test('The page stays below one and a half megabytes.', () => {
  expect(Buffer.byteLength(page)).toBeLessThan(1_500_000);
});

describe.each([
  ['an image with a handler', '<img src=x onerror=alert(1)>'],
  ['the end of a script element', '</script><script>alert(1)</script>'],
  ['the end of an attribute', '" onmouseover="alert(1)'],
  ['the end of a style sheet', '</style><style>*{display:none}'],
  ['an entity', '&lt;b&gt;'],
  ['right-to-left writing', 'בית דפוס \u202e<b>'],
  ['two hundred letters', 'w'.repeat(200)],
])('A name that is %s', (_, name) => {
  const hostile = renderReport(renamed(name));

  test('comes out as text', () => {
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
    expect(withoutData(hostile)).not.toMatch(/<script/);
  });
});

test('Targets stand before the key numbers, with a sign and a word for each verdict, what they mean and how sure it is.', () => {
  const section = page.slice(
    page.indexOf('<section id="targets"'),
    page.indexOf('<section id="key-numbers"'),
  );
  const verdicts = [...section.matchAll(/<span class="mark" aria-hidden="true">(.)<\/span> ([a-z ]+)</g)];
  expect(verdicts.map((match) => [match[1], match[2]])).toEqual([
    ['✓', 'met'],
    ['✗', 'missed'],
    ['?', 'not decided'],
    ['?', 'not decided'],
  ]);
  expect(section).toContain('<bdi>90 % of rush jobs within 3 days</bdi>');
  expect(section).toContain('93.4\u00a0% (92.6 to 94.2)');
  expect(section).toContain('in 71\u00a0% (65 to 77) of quarters');
  expect(section).toContain('not given: No such job came.');
  expect(section).toContain('over 99.9\u00a0% confidence');
  expect(section).toContain('83.1\u00a0% confidence for met');
  expect(section).toContain('not how probable it is; from 95\u00a0% on');
});

test('Results with nothing but weeks still make a page.', () => {
  const bare: Results = {
    ...results,
    headline: [],
    targets: [],
    jobs: [],
    hours: [],
    queues: [],
    machines: [],
    builds: [],
    stations: [],
    people: [],
    trouble: { equipment: [], parts: [] },
    money: null,
    handCalculation: [],
    assumptions: [],
    cautions: [],
    warnings: [],
    checks: [],
  };
  const ids = [...renderReport(bare).matchAll(/<section id="([^"]+)"/g)].map((match) => match[1]);
  expect(ids).toEqual(['key-numbers', 'weeks', 'assumptions', 'origin', 'scenario', 'words']);
});

test('Money is told with its split, what is known beforehand, and the case against sending everything out.', () => {
  const section =
    /<section id="money"[\s\S]*?<\/section>/.exec(page)?.[0].replaceAll(/[\u00a0\u202f]/g, ' ') ?? '';
  expect(section).toContain('In any one quarter a finished part may cost 14.20 to 18.10 EUR.');
  expect(section).toContain('158 800 <span class="interval">158 100 to 159 500</span>');
  expect(section).toContain('– of it for parts made again');
  expect(section).toContain('98 000 EUR (90 400 to 105 600)');
  expect(section).toContain('Tax, financing and inflation are not contained.');
});

test('Without prices outside the page says why there is no comparison.', () => {
  const { money } = results;
  if (money === null) throw new Error('The fixture speaks of money.');
  const reason = 'What "<b>lever" costs outside is not stated.';
  const without = renderReport({ ...results, money: { ...money, case: { kind: 'not compared', reason } } });
  expect(without).toContain('What &quot;&lt;b&gt;lever&quot; costs outside is not stated.');
  expect(without).not.toContain('case-table');
});
