import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { createSimulator, hashHistory } from '@buildweek/core';
import { renderComparison } from '@buildweek/report';
import { comparisonAnswerSchema, parseResults, type Results } from '@buildweek/results';
import { changeScenario, readChanges } from '@buildweek/scenario';
import { startEarlier } from '@buildweek/study';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { buildweek, Folder, ROOT } from '../cli/buildweek.ts';
import { startChromium } from './chromium.ts';
import { changesOf, commandOf, pageOf, play, set } from './live-controls.ts';
import { faultsOf, openedPage, PATIENCE, rowsIn, statusOf, untilDone } from './opened-page.ts';

vi.setConfig({ testTimeout: PATIENCE, hookTimeout: PATIENCE });

const DEMO = `${ROOT}/scenarios/demo.yaml`;
const SMALL = `${ROOT}/scenarios/small.yaml`;
/** More than the rough answer has, so that there is a sharper one. */
const REPLICATIONS = 24;
const LARGEST_PAGE = 1_500_000;

const folder = new Folder();
let browser: Browser;
let demo: Results;
let url: string;

beforeAll(async () => {
  browser = await startChromium();
  url = await pageOf(folder, DEMO, REPLICATIONS);
  demo = parseResults(readFileSync(folder.file('demo.json'), 'utf8'));
});

afterAll(async () => {
  await browser?.close();
  folder.remove();
});

describe('A page that answers back', () => {
  test('is small, opens from disk without a complaint, and shows the numbers of its document first', async () => {
    expect(statSync(folder.file('demo.html')).size).toBeLessThan(LARGEST_PAGE);
    const { page, complaints } = await openedPage(browser, url);
    const first = ((await page.locator('.head').textContent()) ?? '').replace(/\s+/g, ' ');
    for (const sentence of demo.headline.slice(0, 3)) expect(first).toContain(sentence.replace(/\s+/g, ' '));
    expect(complaints).toEqual([]);
    await page.close();
  });

  test('plays a change with the numbers and the record of the command line, without a complaint', async () => {
    const { page, complaints } = await openedPage(browser, url);
    await set(page, 'people/technicians', 3);
    await page.locator('[data-factor="demand"]').fill('120');
    await page.locator('[data-factor="breakdowns"]').fill('150');
    await page.locator('[data-hours]').selectOption({ index: 1 });
    const states = await page.evaluateHandle(() => {
      const seen: string[] = [];
      const answer = document.querySelector('[data-answer]') as Node;
      const look = (): unknown => seen.push(document.querySelector('.live-state')?.textContent ?? '');
      new MutationObserver(look).observe(answer, { childList: true });
      return seen;
    });
    await play(page);
    await untilDone(page);
    expect([...new Set(await states.jsonValue())]).toEqual([
      'A first answer, from 20 replications of each lab. A sharper one is coming.',
      `From ${REPLICATIONS} replications of each lab.`,
    ]);
    const shown = await commandOf(page);
    const [program, ...words] = shown.map((word) => (word === 'scenario.yaml' ? DEMO : word));
    expect(program).toBe('buildweek');
    expect(words).toContain(String(REPLICATIONS));
    const { stdout, exitCode } = await buildweek([...words, '--json', '-']);
    expect(exitCode).toBe(0);
    const answer = comparisonAnswerSchema.parse(JSON.parse(stdout));
    writeFileSync(folder.file('compared.html'), renderComparison(answer));
    const compared = await openedPage(browser, pathToFileURL(folder.file('compared.html')).href);
    const cells = (rows: string[][]): string[][] => rows.slice(1).map((row) => row.slice(0, 5));
    const expected = cells(await rowsIn(compared.page, 'pair-1-table'));
    expect(expected.length).toBeGreaterThan(15);
    expect(cells(await rowsIn(page, 'live-pair-1-table'))).toEqual(expected);
    const simulator = createSimulator(startEarlier(demo.lab, 1));
    const { seed, weeks, capWeeks } = demo.run;
    const settings = {
      seed,
      weeks,
      capWeeks,
      ignoredWeeks: 1,
      replication: 0,
      trace: false,
      queueWaits: false,
    };
    const record = hashHistory(simulator.simulate(settings)).slice(0, 16);
    expect(await page.locator('[data-answer] code').first().textContent()).toBe(record);
    await page.waitForSelector('details[data-chart="lead-times"] svg');
    expect(complaints).toEqual([]);
    await page.close();
    await compared.page.close();
  });

  test('gives a link that brings back the change and its answer, and a scenario that the program reads', async () => {
    const { page } = await openedPage(browser, url);
    await set(page, 'people/evening help', 2);
    await page.locator('[data-factor="failed builds"]').fill('150');
    await play(page);
    await untilDone(page);
    const link = await page.locator('[data-link]').inputValue();
    expect(link).toBe(page.url());
    const answered = await rowsIn(page, 'live-pair-1-table');
    await page.locator('[data-words] summary').click();
    const [saved] = await Promise.all([page.waitForEvent('download'), page.locator('[data-save]').click()]);
    await saved.saveAs(folder.file('changed.yaml'));
    const text = readFileSync(folder.file('changed.yaml'), 'utf8');
    expect(text).toBe(changeScenario(demo.scenario.text, readChanges(await changesOf(page))));
    expect(text).toContain('count: 2\n    hours: evening');
    expect(
      (await buildweek(['check', '-'], text.replaceAll('parts/', `${ROOT}/scenarios/parts/`))).exitCode,
    ).toBe(0);
    await page.close();
    const again = await openedPage(browser, link);
    await untilDone(again.page);
    expect(await again.page.locator('[data-count="people/evening help"]').inputValue()).toBe('2');
    expect(await rowsIn(again.page, 'live-pair-1-table')).toEqual(answered);
    expect(again.complaints).toEqual([]);
    await again.page.close();
  });

  test.each([
    ['markup', '#what-if?people%2Ftechnicians=%3Cimg%20src=x%20onerror=alert(1)%3E&hours=%3Cb%3E'],
    ['numbers out of bounds', '#what-if?people%2Ftechnicians=99999&of%20demand=-1'],
    ['what is no text', '#what-if?%E0%A4%A=3'],
  ])('takes no %s from a link', async (_, fragment) => {
    const { page, complaints } = await openedPage(browser, `${url}${fragment}`);
    expect(await statusOf(page)).toBe('The link holds no change that this page knows.');
    expect(await page.locator('[data-count="people/technicians"]').inputValue()).toBe('2');
    expect(complaints).toEqual([]);
    await page.close();
  });
});

describe('A page that is asked again and again', () => {
  let page: Page;
  let complaints: string[];

  beforeAll(async () => {
    ({ page, complaints } = await openedPage(browser, url));
  });

  afterAll(async () => {
    await page?.close();
  });

  test('stops at once, keeps what it has, and plays again', async () => {
    await set(page, 'machines/resin', 4);
    await play(page);
    await page.locator('[data-stop]').click();
    expect(await statusOf(page)).toBe('Stopped.');
    expect(await page.locator('[data-play]').isEnabled()).toBe(true);
    expect(await page.locator('[data-stop]').isVisible()).toBe(false);
    await play(page);
    await untilDone(page);
    await page.locator('[data-reset]').click();
    expect(await page.locator('[data-count="machines/resin"]').inputValue()).toBe('3');
    expect(await page.locator('[data-answer]').isVisible()).toBe(false);
    expect(new URL(page.url()).hash).toBe('');
  });

  test('refuses what makes no sense in the words of the scenario', async () => {
    await set(page, 'machines/powder', 0);
    await play(page);
    await page.locator('[data-refused]').waitFor();
    const reasons = (await page.locator('[data-reasons]').textContent()) ?? '';
    const { stderr, exitCode } = await buildweek(['run', DEMO, '--with', 'machines / powder / count: 0']);
    expect(exitCode).toBe(2);
    const said = (text: string): string[] => text.match(/(?<=: error: ).*/g) ?? [];
    expect(said(reasons).length).toBeGreaterThan(0);
    expect(said(reasons)).toEqual(said(stderr));
    expect(await page.locator('[data-play]').isEnabled()).toBe(true);
    await page.locator('[data-reset]').click();
  });

  test('is worked by keyboard alone, with the focus to be seen', async () => {
    const tabTo = async (selector: string): Promise<void> => {
      for (let press = 0; press < 200; press++) {
        await page.keyboard.press('Tab');
        const found = await page.evaluate((wanted) => {
          const { activeElement } = document;
          if (activeElement === null || !activeElement.matches(wanted)) return null;
          return getComputedStyle(activeElement).outlineStyle;
        }, selector);
        if (found === null) continue;
        expect(found).toBe('solid');
        return;
      }
      throw new Error(`The keyboard does not reach ${selector}.`);
    };
    await page.locator('#what-if').evaluate((section) => {
      section.setAttribute('tabindex', '-1');
      section.focus();
    });
    await tabTo('[data-count="people/technicians"]');
    await page.keyboard.press('ArrowUp');
    await tabTo('[data-hours]');
    await page.keyboard.press('ArrowDown');
    await tabTo('[data-factor="demand"]');
    await page.keyboard.press('ArrowRight');
    await tabTo('[data-play]');
    await page.keyboard.press('Enter');
    await untilDone(page);
    expect(await page.locator('[data-play]').evaluate((button) => document.activeElement === button)).toBe(
      true,
    );
    await tabTo('[data-words] summary');
    await page.keyboard.press('Enter');
    await tabTo('[data-save]');
    await tabTo('details[data-chart="machine-states"] summary');
    await page.keyboard.press('Enter');
    await page.waitForSelector('details[data-chart="machine-states"] svg');
    expect(complaints).toEqual([]);
  });
});

describe('An answer', () => {
  let page: Page;

  beforeAll(async () => {
    ({ page } = await openedPage(browser, `${url}#what-if?people%2Ftechnicians=3`));
    await untilDone(page);
    for (const chart of ['hours-by-part', 'queues-by-hour']) {
      await page.locator(`details[data-chart="${chart}"] summary`).first().click();
      await page.waitForSelector(`details[data-chart="${chart}"] svg`);
    }
  });

  afterAll(async () => {
    await page?.close();
  });

  test.each([360, 1024, 1920])(
    'fits a screen of %i pixels and has no fault that axe finds there',
    async (width) => {
      await page.setViewportSize({ width, height: 900 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await faultsOf(page, '#what-if')).toEqual([]);
    },
  );

  test('is printed with all of its charts, none of them clipped, and without the controls', async () => {
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 700, height: 900 });
    const printed = await page.evaluate(() => ({
      form: document.querySelector('[data-form]')?.getClientRects().length,
      charts: [...document.querySelectorAll('[data-answer] svg')].flatMap((svg) => {
        const box = svg.getBoundingClientRect();
        return box.width === 0 ? [] : [box.left >= -1 && box.right <= innerWidth + 1];
      }),
    }));
    expect(printed.form).toBe(0);
    // Differences, and three charts of both labs.
    expect(printed.charts).toEqual(Array.from({ length: 7 }, () => true));
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString('latin1').match(/\/MediaBox/g)?.length).toBeGreaterThan(5);
  });
});

describe('Names that would do harm', () => {
  const HOSTILE = {
    technician: '<img src=x onerror=alert(1)>',
    printer: '=HYPERLINK("http://x.test";"a/b")',
    bracket: `מסילת כבל \u202e ${'w'.repeat(180)}`,
  };

  test('come out as text, can be counted, and can be named on the command line', async () => {
    let text = readFileSync(SMALL, 'utf8');
    for (const [name, hostile] of Object.entries(HOSTILE)) {
      text = text.replace(new RegExp(`(?<=^ +)${name}:`, 'gm'), `${JSON.stringify(hostile)}:`);
      text = text.replace(new RegExp(`(?<=on: )${name}`, 'g'), JSON.stringify(hostile));
    }
    const scenario = folder.write('hostile.yaml', text);
    const address = await pageOf(folder, scenario, REPLICATIONS);
    const { page, complaints } = await openedPage(browser, address);
    await set(page, `people/${HOSTILE.technician}`, 2);
    await set(page, `machines/${HOSTILE.printer}`, 4);
    await play(page);
    await untilDone(page);
    const answer = await page.locator('[data-answer]').textContent();
    for (const name of [HOSTILE.technician, HOSTILE.printer]) expect(answer).toContain(name);
    expect(await page.locator('[data-answer] img').count()).toBe(0);
    expect(await buildweek(['check', scenario, '--with', await changesOf(page)])).toMatchObject({
      exitCode: 0,
      stderr: expect.not.stringContaining('error'),
    });
    expect(complaints).toEqual([]);
    await page.close();
  });
});
