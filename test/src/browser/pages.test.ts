import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { comparisonFixture } from '@buildweek/charts/comparison-fixture';
import { decisionFixture } from '@buildweek/charts/decision-fixture';
import { resultsFixture } from '@buildweek/charts/fixture';
import { partAnswerFixture } from '@buildweek/charts/part-fixture';
import { planAnswerFixture } from '@buildweek/charts/plan-fixture';
import { promiseFixture } from '@buildweek/charts/promise-fixture';
import { replayFixture } from '@buildweek/charts/replay-fixture';
import { staffAnswerFixture } from '@buildweek/charts/staff-fixture';
import {
  renderComparison,
  renderDecision,
  renderPart,
  renderPlan,
  renderPromise,
  renderReplay,
  renderReport,
  renderStaff,
} from '@buildweek/report';
import type { PartAnswer, Results } from '@buildweek/results';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startChromium } from './chromium.ts';

const WIDTHS = [360, 1024, 1920] as const;
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
let folder: string;

/** A page that is open, and what went wrong while it opened. */
interface Opened {
  readonly page: Page;
  readonly complaints: string[];
  readonly requests: string[];
}

function fileOf(name: string, html: string): string {
  const path = join(folder, `${name}.html`);
  writeFileSync(path, html);
  return pathToFileURL(path).href;
}

/** Opens a page from disk, without any network. */
async function open(url: string, width: number): Promise<Opened> {
  const page = await browser.newPage({ viewport: { width, height: 900 }, offline: true });
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('dialog', (dialog) => complaints.push(`dialog: ${dialog.message()}`));
  page.on('request', (request) => requests.push(request.url()));
  await page.goto(url);
  return { page, complaints, requests };
}

/** What results and answers must bear: markup, long words, other directions of writing. */
const HOSTILE = [
  '<img src=x onerror=alert(1)>',
  '</script><script>alert(1)</script>',
  'w'.repeat(200),
  'long name '.repeat(20).trim(),
  'מסילת כבל \u202e',
];

/** An answer with one hostile name after the other in the place of its names. */
function renamed<Answer>(answer: Answer, names: readonly string[]): Answer {
  let text = JSON.stringify(answer);
  names.forEach((before, index) => {
    const after = JSON.stringify(HOSTILE[index % HOSTILE.length]).slice(1, -1);
    text = text.replaceAll(before, after);
  });
  return JSON.parse(text) as Answer;
}

/** The answer for a part with hostile routes, stages and notes. */
function hostilePart(): PartAnswer {
  const answer = partAnswerFixture();
  const routes = [...answer.ways, ...answer.impossible].map(({ route }) => route);
  return renamed(answer, [...routes, answer.part.name, 'remove supports']);
}

/** Names of plans are made from what the scenario names, and changes are in its words. */
const COMPARED = ['technicians / count: 3', 'machines / resin / count: 4', 'as it is', 'technicians', 'Two'];
const CHOSEN = ['technicians', 'resin', '10:00-18:30', '90 % of jobs within 3 days', 'Two'];

const PROMISED = ['resin part', 'bracket', 'technicians 1', 'resin 1', 'powder part'];

const DECIDED = [
  'technicians',
  'resin',
  'Three processes',
  '10:00-18:30',
  '90 % of jobs within 3 days',
  'powder',
];

const REPLAYED = ['housing', 'remove supports', 'requests.csv', 'Invented lab', 'gadget'];
const STAFFED = ['one of technicians from 10:00', 'early and late', 'run machines', 'technicians', 'Rings'];

/** The results with long, foreign and hostile names. */
function hostile(): Results {
  const names: readonly (readonly [string, string])[] = [
    ['lens ring', '<img src=x onerror=alert(1)>'],
    ['dental tray', '</script><script>alert(1)</script>'],
    ['resin part', 'w'.repeat(200)],
    ['drill jig', 'long name '.repeat(20).trim()],
    ['cable guide', 'מסילת כבל \u202e'],
    ['filament', 'W'.repeat(200)],
    ['technicians', '"><svg onload=alert(1)>'],
    ['washer', 'مغسلة'],
  ];
  let text = JSON.stringify(resultsFixture());
  for (const [before, after] of names) text = text.replaceAll(before, JSON.stringify(after).slice(1, -1));
  return JSON.parse(text) as Results;
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'buildweek-report-'));
  browser = await startChromium();
});

afterAll(async () => {
  await browser?.close();
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
});

/** Charts of each page. */
const RUN_CHARTS = 15;
const PART_CHARTS = 4;
const COMPARISON_CHARTS = 2;
const PLAN_CHARTS = 3;
const STAFF_CHARTS = 3;
const PROMISE_CHARTS = 2;
const REPLAY_CHARTS = 5;
const DECISION_CHARTS = 16;

describe.each([
  ['a run', renderReport(resultsFixture()), RUN_CHARTS],
  ['a run with hostile names', renderReport(hostile()), RUN_CHARTS],
  ['a part', renderPart(partAnswerFixture()), PART_CHARTS],
  ['a part with hostile names', renderPart(hostilePart()), PART_CHARTS],
  ['a comparison', renderComparison(comparisonFixture()), COMPARISON_CHARTS],
  [
    'a comparison with hostile names',
    renderComparison(renamed(comparisonFixture(), COMPARED)),
    COMPARISON_CHARTS,
  ],
  ['a search for a plan', renderPlan(planAnswerFixture()), PLAN_CHARTS],
  ['a search with hostile names', renderPlan(renamed(planAnswerFixture(), CHOSEN)), PLAN_CHARTS],
  ['a decision', renderDecision(decisionFixture()), DECISION_CHARTS],
  ['a decision with hostile names', renderDecision(renamed(decisionFixture(), DECIDED)), DECISION_CHARTS],
  ['ways of staffing', renderStaff(staffAnswerFixture()), STAFF_CHARTS],
  ['ways of staffing with hostile names', renderStaff(renamed(staffAnswerFixture(), STAFFED)), STAFF_CHARTS],
  ['promised dates with hostile names', renderPromise(renamed(promiseFixture(), PROMISED)), PROMISE_CHARTS],
  ['a model held against a log', renderReplay(replayFixture()), REPLAY_CHARTS],
  ['the same with hostile names', renderReplay(renamed(replayFixture(), REPLAYED)), REPLAY_CHARTS],
] as const)('The page of %s', (name, html, chartCount) => {
  let url: string;

  beforeAll(() => {
    url = fileOf(name, html);
  });

  test.each(WIDTHS)(
    'opens from disk at %i pixels without an error, a violation or a request',
    async (width) => {
      const { page, complaints, requests } = await open(url, width);
      expect(complaints).toEqual([]);
      expect(requests).toEqual([url]);
      await page.close();
    },
  );

  test.each(WIDTHS)('is never wider than a screen of %i pixels', async (width) => {
    const { page } = await open(url, width);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await page.close();
  });

  test.each(WIDTHS)(
    'shows every chart once at %i pixels, with all of its text inside the drawing',
    async (width) => {
      const { page } = await open(url, width);
      const charts = await page.evaluate(() =>
        [...document.querySelectorAll('.picture svg')]
          .filter((svg) => svg.getClientRects().length > 0)
          .map((svg) => {
            const frame = svg.getBoundingClientRect();
            const outside = [...svg.querySelectorAll('text')].filter((text) => {
              const box = text.getBoundingClientRect();
              const slack = 2;
              return (
                box.width > 0 &&
                (box.left < frame.left - slack ||
                  box.right > frame.right + slack ||
                  box.top < frame.top - slack ||
                  box.bottom > frame.bottom + slack)
              );
            });
            return outside.map((text) => text.textContent);
          }),
      );
      expect(charts.length).toBe(chartCount);
      expect(charts.flat()).toEqual([]);
      await page.close();
    },
  );

  test.each(WIDTHS)('has no fault that axe finds at %i pixels', async (width) => {
    const { page } = await open(url, width);
    await page.evaluate(axe);
    const found = await page.evaluate(async () => {
      const { axe: engine } = globalThis as unknown as { axe: { run(): Promise<AxeResults> } };
      for (const details of document.querySelectorAll('details')) details.open = true;
      return (await engine.run()).violations;
    });
    expect(
      found.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.html).join(' ')}`),
    ).toEqual([]);
    await page.close();
  });

  test('prints on A4 with its charts and without its contents', async () => {
    const { page } = await open(url, 1024);
    await page.emulateMedia({ media: 'print' });
    const shown = await page.evaluate(() => ({
      contents: document.querySelector('nav')?.getClientRects().length,
      wide: [...document.querySelectorAll('.wide')].filter((one) => one.getClientRects().length > 0).length,
    }));
    expect(shown).toEqual({ contents: 0, wide: chartCount });
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const boxes = [...pdf.matchAll(/\/MediaBox \[([^\]]+)\]/g)].map((match) => match[1]);
    expect(boxes.length).toBeGreaterThan(2);
    // A4 in points: 210 by 297 mm.
    for (const box of boxes) {
      const [, , width, height] = (box ?? '').trim().split(/\s+/).map(Number);
      expect(width).toBeCloseTo((210 / 25.4) * 72, -1);
      expect(height).toBeCloseTo((297 / 25.4) * 72, -1);
    }
    await page.close();
  });
});

test('Every link and every region that scrolls can be reached by keyboard, with the focus to be seen.', async () => {
  const { page } = await open(fileOf('keyboard', renderReport(resultsFixture())), 360);
  const wanted = await page.evaluate(
    () => document.querySelectorAll('a, summary, button, [tabindex="0"]').length,
  );
  const seen = new Set<string>();
  for (let press = 0; press < wanted + 5; press++) {
    await page.keyboard.press('Tab');
    const focused = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const style = getComputedStyle(element);
      const all = [...document.querySelectorAll('*')];
      return { place: String(all.indexOf(element)), outline: style.outlineStyle };
    });
    if (focused === null) break;
    expect(focused.outline).toBe('solid');
    seen.add(focused.place);
  }
  const hidden = await page.evaluate(
    () =>
      document.querySelectorAll(
        ['button', '[tabindex="0"]']
          .flatMap((one) => [`details:not([open]) > :not(summary) ${one}`, `details:not([open]) > ${one}`])
          .join(', '),
      ).length,
  );
  expect(seen.size).toBe(wanted - hidden);
  await page.close();
});
