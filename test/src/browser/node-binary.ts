import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Where they are kept once they have been fetched; not part of the repository. */
const CACHE = fileURLToPath(new URL('../../node_modules/.cache/buildweek', import.meta.url));

/**
 * Another version of Node, fetched from the npm registry the first time and kept. Its package holds the program and
 * no scripts; the name is that which the package `node` itself installs on this kind of machine.
 *
 * @param version as `22.23.3`
 * @returns path of the program
 * @throws Error with what npm said when it cannot be had
 */
export function fetchNode(version: string): string {
  const platform = process.platform === 'win32' ? 'win' : process.platform;
  const name = `node-${platform}-${process.arch}`;
  const program = process.platform === 'win32' ? 'bin/node.exe' : 'bin/node';
  const kept = join(CACHE, `${name}-${version}`);
  const path = join(kept, 'node_modules', name, program);
  if (existsSync(path)) return path;
  mkdirSync(CACHE, { recursive: true });
  const folder = mkdtempSync(join(CACHE, 'fetching-'));
  try {
    const { status, stdout, stderr } = spawnSync(
      'npm',
      [
        'install',
        '--prefix',
        folder,
        '--no-save',
        '--ignore-scripts',
        '--no-package-lock',
        `${name}@${version}`,
      ],
      { cwd: folder, encoding: 'utf8', shell: process.platform === 'win32' },
    );
    if (status !== 0) {
      throw new Error(
        `Node ${version} could not be fetched from the npm registry, which the comparison of versions needs:\n${stdout}${stderr}`,
      );
    }
    // Moved in one step, so that a fetch that was broken off is never taken for a program.
    if (!existsSync(kept)) renameSync(folder, kept);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return path;
}
