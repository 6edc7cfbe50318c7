import { readFileSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { buildweek, Folder, ROOT, startBuildweek } from '../cli/buildweek.ts';
import { startChromium } from './chromium.ts';
import { faultsOf, openedPage, PATIENCE, untilDone } from './opened-page.ts';

vi.setConfig({ testTimeout: PATIENCE, hookTimeout: PATIENCE });

const SMALL = readFileSync(`${ROOT}/scenarios/small.yaml`, 'utf8').replace(
  'weeks: 13',
  'weeks: 2, ignored weeks: 1',
);

const folder = new Folder();
let browser: Browser;
let scenario: string;
let server: ReturnType<typeof startBuildweek>;
let address: string;

beforeAll(async () => {
  browser = await startChromium();
  scenario = folder.write('lab.yaml', SMALL);
  server = startBuildweek(['open', scenario]);
  address = await new Promise<string>((resolve) => {
    server.child.stdout?.on('data', (text: string) => resolve(/http:\S+/.exec(text)?.[0] ?? text));
  });
});

afterAll(async () => {
  await browser?.close();
  server?.child.kill('SIGKILL');
  folder.remove();
});

/** What the server answers to whoever calls it by another name, or asks for something else. */
function answerTo(path: string, host: string, method = 'GET'): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const { port } = new URL(address);
    const asked = request({ host: '127.0.0.1', port, path, method, headers: { Host: host } }, (response) => {
      response.destroy();
      resolve(response.statusCode);
    });
    asked.on('error', reject).end();
  });
}

describe('buildweek open', () => {
  test('answers to this computer alone, and only to what there is', async () => {
    const { hostname, host, port } = new URL(address);
    expect(hostname).toBe('127.0.0.1');
    expect(await answerTo('/', host)).toBe(200);
    expect(await answerTo('/', `localhost:${port}`)).toBe(200);
    expect(await answerTo('/', 'elsewhere.test')).toBe(403);
    expect(await answerTo('/', `elsewhere.test:${port}`)).toBe(403);
    expect(await answerTo('/etc/passwd', host)).toBe(404);
    expect(await answerTo('/', host, 'POST')).toBe(405);
  });

  test('shows the lab, what is wrong with it when its file is saved, and the lab again', async () => {
    const { page, complaints } = await openedPage(browser, address, { offline: false });
    await page.getByRole('heading', { name: 'What if' }).waitFor();
    await page.locator('[data-count="machines/printer"]').fill('4');
    await page.locator('[data-play]').click();
    await untilDone(page);
    writeFileSync(scenario, SMALL.replace('count: 3', 'count: three <b>'));
    const lines = SMALL.slice(0, SMALL.indexOf('3, start: at once')).split('\n');
    const place = `Line ${lines.length}, column ${(lines.at(-1)?.length ?? 0) + 1}: `;
    await page.getByRole('heading', { name: place }).waitFor();
    expect(await page.locator('mark').textContent()).toBe('three <b>');
    expect(await faultsOf(page, 'body')).toEqual([]);
    // The address still holds the change, which is played again on the lab that is mended.
    writeFileSync(scenario, SMALL.replace('name: A small print corner', 'name: Mended'));
    await page.getByRole('heading', { name: 'Mended' }).waitFor();
    await untilDone(page);
    expect(await page.locator('[data-count="machines/printer"]').inputValue()).toBe('4');
    expect(complaints).toEqual([]);
    await page.close();
  });

  test('says when a port is taken, and ends with Ctrl-C', async () => {
    const { port } = new URL(address);
    const second = await buildweek(['open', scenario, '--port', port]);
    expect(second).toMatchObject({
      exitCode: 2,
      stderr: expect.stringContaining(`Port ${port} cannot be had`),
    });
    expect((await buildweek(['open', folder.file('nothing.yaml')])).exitCode).toBe(2);
    server.child.kill('SIGINT');
    expect((await server.ended).exitCode).toBe(0);
  });
});
