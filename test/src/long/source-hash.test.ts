import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { PACKAGES, sourceHash } from './source-hash.ts';

let packages: string;

function write(path: string, text: string): void {
  const file = join(packages, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}

beforeEach(() => {
  packages = mkdtempSync(join(tmpdir(), 'buildweek-sources-'));
  for (const name of PACKAGES) write(`${name}/src/deep/file.ts`, name);
});

afterEach(() => {
  rmSync(packages, { recursive: true });
});

test.each(PACKAGES)(
  'Another text, or another name of a file, in %s makes another hash of the sources.',
  (name) => {
    const before = sourceHash(packages);
    write(`${name}/src/deep/file.ts`, `${name} `);
    const changed = sourceHash(packages);
    write(`${name}/src/deep/file.ts`, name);
    expect(sourceHash(packages)).toBe(before);
    write(`${name}/src/deep/other.ts`, '');
    expect(new Set([before, changed, sourceHash(packages)]).size).toBe(3);
  },
);

test('Tests and what only they use do not change the hash of the sources.', () => {
  const before = sourceHash(packages);
  for (const path of ['src/file.test.ts', 'src/fixture/lab.ts', 'src/test-data/queue.ts', 'bench/main.ts']) {
    write(`core/${path}`, 'test');
  }
  expect(sourceHash(packages)).toBe(before);
});
