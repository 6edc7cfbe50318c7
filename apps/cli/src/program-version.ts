import { readFileSync } from 'node:fs';

/** Version of the installed program, as its package says. */
export function programVersion(): string {
  const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  const { version } = JSON.parse(text) as { version: string };
  return version;
}
