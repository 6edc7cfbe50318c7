import { unwatchFile, watchFile } from 'node:fs';

/** Milliseconds between two looks at a file. Editors replace files, so what is watched is the name. */
const INTERVAL = 300;

/**
 * Calls back whenever a file has changed, come or gone.
 * @returns ends it
 */
export function followFile(path: string, changed: () => void): () => void {
  const look = (now: { mtimeMs: number; size: number }, before: { mtimeMs: number; size: number }): void => {
    if (now.mtimeMs !== before.mtimeMs || now.size !== before.size) changed();
  };
  watchFile(path, { interval: INTERVAL }, look);
  return () => unwatchFile(path, look);
}
