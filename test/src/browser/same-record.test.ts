import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { readScenario } from '@buildweek/scenario';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { noting, scenarioMeshes } from '../scenario-meshes.ts';
import { bundleDemoRecord } from './bundle.ts';
import { startChromium } from './chromium.ts';
import { type DemoRecord, recordOf } from './demo-record.ts';
import { fetchNode } from './node-binary.ts';

const REPLICATIONS = 3;

/** Milliseconds for what may have to be fetched first. */
const PATIENCE = 300_000;

const WORKER = `
  import { recordOf } from './demo-record.mjs';
  self.onmessage = ({ data }) => self.postMessage(recordOf(data.text, data.replications, data.answers));
`;

const demo = readFileSync(new URL('../../../scenarios/demo.yaml', import.meta.url), 'utf8');
const { reader, answers } = noting(scenarioMeshes);
readScenario(demo, 'demo.yaml', null, reader);
const here = recordOf(demo, REPLICATIONS, answers);

let folder: string;
let bundle: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'buildweek-same-record-'));
  bundle = await bundleDemoRecord();
  writeFileSync(join(folder, 'demo-record.mjs'), bundle);
}, PATIENCE);

afterAll(() => {
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
});

/** Plays the bundle with another program than the one that runs this test. */
function recordBy(program: string): DemoRecord & { readonly version: string } {
  const module = pathToFileURL(join(folder, 'demo-record.mjs')).href;
  const script = `
    import { recordOf } from ${JSON.stringify(module)};
    import { readFileSync } from 'node:fs';
    const { text, answers } = JSON.parse(readFileSync(0, 'utf8'));
    const record = recordOf(text, ${REPLICATIONS}, answers);
    console.log(JSON.stringify({ ...record, version: process.version }));
  `;
  const said = execFileSync(program, ['--input-type=module', '--eval', script], {
    input: JSON.stringify({ text: demo, answers }),
    encoding: 'utf8',
    maxBuffer: 100_000_000,
  });
  return JSON.parse(said);
}

describe('The same scenario, seed and replication give the same record', () => {
  test('whose hashes tell one replication from another', () => {
    expect(new Set(here.hashes).size).toBe(REPLICATIONS);
  });

  test('from the sources and from one bundled module', () => {
    expect(recordBy(process.execPath)).toEqual({ ...here, version: process.version });
  });

  test.each(['22.23.3', '24.9.0'])(
    'on Node %s',
    (version) => {
      expect(recordBy(fetchNode(version))).toEqual({ ...here, version: `v${version}` });
    },
    PATIENCE,
  );

  describe('in Chromium', () => {
    let browser: Browser;

    beforeAll(async () => {
      browser = await startChromium();
    });

    afterAll(async () => {
      await browser?.close();
    });

    test('in a worker of a page', async () => {
      const page = await browser.newPage();
      const serve = (path: string, contentType: string, body: string): Promise<unknown> =>
        page.route(`http://lab.test/${path}`, (route) => route.fulfill({ contentType, body }));
      await serve('', 'text/html', '<!doctype html><title>Demo</title>');
      await serve('demo-record.mjs', 'text/javascript', bundle);
      await serve('worker.mjs', 'text/javascript', WORKER);
      await page.goto('http://lab.test/');
      const found = await page.evaluate(
        ([text, replications, answers]) => {
          const worker = new Worker('worker.mjs', { type: 'module' });
          return new Promise<unknown>((resolve, reject) => {
            worker.onmessage = ({ data }) => resolve(data);
            worker.onerror = ({ message }) => reject(new Error(message));
            worker.postMessage({ text, replications, answers });
          });
        },
        [demo, REPLICATIONS, answers] as const,
      );
      expect(found).toEqual(here);
      await page.close();
    });
  });
});
