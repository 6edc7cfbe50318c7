import { statSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { startChromium } from '../browser/chromium.ts';
import { buildweek, Folder, ROOT } from '../cli/buildweek.ts';

// The bench of the page that answers back: how large it is, how soon it is there, and how soon it answers, beside the
// command line on one worker, in turns. `npm run bench --workspace @buildweek/test`; it fails when a bound is not kept.

const ROUNDS = 5;
const DEMO = `${ROOT}/scenarios/demo.yaml`;
const CHANGE = 'people / technicians / count: 3';
/** What the first answer rests on. */
const REPLICATIONS = '20';
const MOST = { bytes: 1_500_000, firstScreen: 1, firstAnswer: 2, ratio: 1.5 } as const;

const failures: string[] = [];

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}

function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[values.length >> 1] ?? Number.NaN;
}

function judge(what: string, value: number, most: number, unit: string): void {
  const isKept = value <= most;
  if (!isKept) failures.push(what);
  print(`${what}: ${value.toFixed(2)}${unit}, at most ${most}${unit}: ${isKept ? 'kept' : 'NOT KEPT'}`);
}

/** Seconds from opening a page to the first thing that is seen of it. */
async function firstScreen(browser: Browser, url: string): Promise<number> {
  const page = await browser.newPage({ offline: true });
  await page.goto(url);
  const painted = await page.evaluate(async () => {
    const found = (): number | undefined =>
      performance.getEntriesByName('first-contentful-paint')[0]?.startTime;
    while (found() === undefined) await new Promise((resolve) => setTimeout(resolve, 5));
    return found() ?? 0;
  });
  await page.close();
  return painted / 1000;
}

/** Seconds from the press of the button to the answer in the page, measured there. */
function answerTime(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const [play, answer] = ['play', 'answer'].map((name) => document.querySelector(`[data-${name}]`));
    const start = performance.now();
    (play as HTMLButtonElement).click();
    await new Promise<void>((resolve) => {
      new MutationObserver(() => resolve()).observe(answer as Node, { childList: true });
    });
    return (performance.now() - start) / 1000;
  });
}

/** Of a page that was just opened, whose simulator is still packed; and of one that has answered before. */
async function firstAnswers(browser: Browser, url: string): Promise<readonly [cold: number, warm: number]> {
  const page = await browser.newPage({ offline: true });
  await page.goto(url);
  await page.locator('[data-count="people/technicians"]').fill('3');
  const cold = await answerTime(page);
  await page.waitForFunction(() => document.querySelector('[data-status]')?.textContent?.startsWith('Done:'));
  await page.locator('[data-count="people/technicians"]').fill('4');
  const warm = await answerTime(page);
  await page.close();
  return [cold, warm];
}

/** Seconds of the same question on the command line. */
async function commandTime(ignoredWeeks: string): Promise<number> {
  const start = performance.now();
  const more = ['--replications', REPLICATIONS, '--ignored-weeks', ignoredWeeks, '--workers', '1'];
  const { exitCode } = await buildweek(['compare', DEMO, '--with', CHANGE, ...more]);
  if (exitCode !== 0) throw new Error('The command line could not answer.');
  return (performance.now() - start) / 1000;
}

const folder = new Folder();
const browser = await startChromium();
try {
  const json = folder.file('demo.json');
  const played = await buildweek(['run', DEMO, '--json', json]);
  const reported = await buildweek(['report', json]);
  if (played.exitCode !== 0 || reported.exitCode !== 0) throw new Error('The demo could not be played.');
  const file = folder.file('demo.html');
  const url = pathToFileURL(file).href;
  const screens: number[] = [];
  const cold: number[] = [];
  const warm: number[] = [];
  const commands: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    screens.push(await firstScreen(browser, url));
    const [first, second] = await firstAnswers(browser, url);
    cold.push(first);
    warm.push(second);
    commands.push(await commandTime('1'));
  }
  print(
    `The page of the demo, ${cpus().length} cores of ${cpus()[0]?.model.trim()}, load ${loadavg()[0]?.toFixed(1)}, Chromium ${browser.version()}, Node ${process.version}; medians of ${ROUNDS} rounds in turns.`,
  );
  judge('Size with the simulator', statSync(file).size / 1e6, MOST.bytes / 1e6, ' MB');
  judge('From opening to the first screen', median(screens), MOST.firstScreen, ' s');
  judge('From the press to the first answer, simulator still packed', median(cold), MOST.firstAnswer, ' s');
  print(`The same once it has answered before: ${median(warm).toFixed(2)} s`);
  print(`The same question on the command line, one worker: ${median(commands).toFixed(2)} s`);
  judge('First answer beside the command line', median(cold) / median(commands), MOST.ratio, ' times');
} finally {
  await browser.close();
  folder.remove();
}
if (failures.length > 0) {
  print(`Not kept: ${failures.join('; ')}.`);
  process.exitCode = 1;
}
