import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Milliseconds after which something that should come is given up. */
export const PATIENCE = 120_000;

/** A page that is open, and everything that went wrong in it. */
export interface OpenedPage {
  readonly page: Page;
  /** Messages of the console, which tells of violations of the policy too; errors, dialogs. */
  readonly complaints: string[];
}

/** Opens a page that answers back. @param offline whether there is no network at all */
export async function openedPage(
  browser: Browser,
  url: string,
  { width = 1440, offline = true }: { readonly width?: number; readonly offline?: boolean } = {},
): Promise<OpenedPage> {
  const page = await browser.newPage({ viewport: { width, height: 900 }, offline });
  // Other tests may keep the cores busy.
  page.setDefaultTimeout(PATIENCE);
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('dialog', (dialog) => complaints.push(`dialog: ${dialog.message()}`));
  await page.goto(url);
  return { page, complaints };
}

/** What axe finds in a part of a page, a line for each. */
export async function faultsOf(page: Page, part: string): Promise<string[]> {
  await page.evaluate(axe);
  const found = await page.evaluate(async (selector) => {
    const { axe: engine } = globalThis as unknown as { axe: { run(part: string): Promise<AxeResults> } };
    return (await engine.run(selector)).violations;
  }, part);
  return found.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`);
}

/** The text of what answers to a reader: what goes on. */
export function statusOf(page: Page): Promise<string | null> {
  return page.locator('[data-status]').textContent();
}

/** Waits until the last answer is there. */
export async function untilDone(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('[data-status]')?.textContent?.startsWith('Done:'));
}

/** Cells of a table of the page, row by row, with plain spaces. */
export function rowsIn(page: Page, caption: string): Promise<string[][]> {
  return page.evaluate(
    (id) =>
      [...(document.getElementById(id)?.closest('table')?.rows ?? [])].map((row) =>
        [...row.cells].map((cell) => (cell.textContent ?? '').replace(/\s+/g, ' ').trim()),
      ),
    caption,
  );
}
