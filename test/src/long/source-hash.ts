import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';

/** Packages whose sources decide what a study gives. */
export const PACKAGES = ['numbers', 'model', 'results', 'statistics', 'core', 'scenario', 'study'] as const;

/** Sources that no study runs through. */
const BESIDE = /\.test\.ts$|\.d\.ts$|(^|\/)(fixture|test-data)\//;

/**
 * SHA-256 over the names and texts of all sources that a study runs through.
 *
 * @param packages path of the folder with all packages
 */
export function sourceHash(packages: string): string {
  const hash = createHash('sha256');
  for (const name of PACKAGES) {
    const folder = join(packages, name, 'src');
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map((path) => path.split(sep).join('/'))
      .filter((path) => path.endsWith('.ts') && !BESIDE.test(path))
      .sort();
    for (const path of files) {
      hash
        .update(`${name}/${path}\n`)
        .update(readFileSync(join(folder, path)))
        .update('\n');
    }
  }
  return hash.digest('hex');
}
