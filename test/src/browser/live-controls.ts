import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { buildweek, type Folder } from '../cli/buildweek.ts';

/**
 * Plays a few weeks of a scenario and makes its page, as a user does.
 * @returns address of the page, which stands in the folder beside its results
 */
export async function pageOf(folder: Folder, scenario: string, replications: number): Promise<string> {
  const name = basename(scenario, '.yaml');
  const json = folder.file(`${name}.json`);
  const few = ['--weeks', '3', '--ignored-weeks', '1', '--replications', String(replications)];
  for (const command of [
    ['run', scenario, '--json', json, ...few],
    ['report', json],
  ]) {
    const { exitCode, stderr } = await buildweek(command);
    if (exitCode !== 0) throw new Error(stderr);
  }
  return pathToFileURL(folder.file(`${name}.html`)).href;
}

/** Puts a number where a reader would. */
export async function set(page: Page, group: string, count: number): Promise<void> {
  await page.locator(`[data-count=${JSON.stringify(group)}]`).fill(String(count));
}

/** Presses the one button. */
export async function play(page: Page): Promise<void> {
  await page.locator('[data-play]').click();
}

/** The command that the page gives, in words as a shell would part them. */
export async function commandOf(page: Page): Promise<string[]> {
  const command = (await page.locator('[data-command]').textContent()) ?? '';
  return [...command.matchAll(/"((?:[^"\\]|\\.)*)"|(\S+)/g)].map(
    ([, quoted, bare]) => quoted?.replace(/\\(.)/g, '$1') ?? bare ?? '',
  );
}

/** What that command changes. */
export async function changesOf(page: Page): Promise<string> {
  const words = await commandOf(page);
  return words[words.indexOf('--with') + 1] ?? '';
}
