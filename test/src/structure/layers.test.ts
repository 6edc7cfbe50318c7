import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '../../..');
const packages = readdirSync(join(root, 'packages'));

/** An empty tree with the linter's configuration, in which files are planted. */
let tree = '';

beforeEach(() => {
  tree = mkdtempSync(join(tmpdir(), 'buildweek-layers-'));
  const configuration = JSON.parse(readFileSync(join(root, 'biome.json'), 'utf8'));
  writeFileSync(join(tree, 'biome.json'), JSON.stringify({ ...configuration, vcs: { enabled: false } }));
});

afterEach(() => {
  rmSync(tree, { recursive: true });
});

/** What the linter says of a source file that is planted in a package. */
function lintPlanted(packageName: string, source: string): { ok: boolean; output: string } {
  const folder = join(tree, 'packages', packageName, 'src');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'planted.ts'), source);
  const result = spawnSync(join(root, 'node_modules/.bin/biome'), ['lint', 'packages'], {
    cwd: tree,
    encoding: 'utf8',
  });
  return { ok: result.status === 0, output: result.stdout + result.stderr };
}

describe('The direction of imports', () => {
  it.each([
    ['core', 'study'],
    ['core', 'scenario'],
    ['core', 'statistics'],
    ['statistics', 'model'],
    ['charts', 'core'],
    ['model', 'core'],
    ['numbers', 'statistics'],
    ['study', 'cli'],
    ['scenario', 'core'],
    ['records', 'core'],
    ['statistics', 'records'],
  ])('catches a planted import from %s up to %s', (from, to) => {
    const { ok, output } = lintPlanted(from, `export * from '@buildweek/${to}';\n`);
    expect(ok).toBe(false);
    expect(output).toContain('Imports point down only');
  });

  it.each(packages)('catches an import of Node in %s, which must run in a browser', (name) => {
    const { ok, output } = lintPlanted(name, "export { readFileSync } from 'node:fs';\n");
    expect(ok).toBe(false);
    expect(output).toContain('runs unchanged in a browser');
  });

  it.each(packages)('lets %s import what its manifest declares', (name) => {
    const manifest = JSON.parse(readFileSync(join(root, 'packages', name, 'package.json'), 'utf8'));
    const own = Object.keys(manifest.dependencies ?? {}).filter((dependency) =>
      dependency.startsWith('@buildweek/'),
    );
    const source = own.map((dependency, index) => `export * as a${index} from '${dependency}';\n`).join('');
    expect(lintPlanted(name, `${source}export const planted = true;\n`)).toMatchObject({ ok: true });
  });
});
