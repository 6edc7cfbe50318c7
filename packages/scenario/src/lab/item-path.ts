import type { Reading } from '../reading.ts';
import type { SourcePath } from '../source/source-node.ts';

/** Where one of several things under a key stands: in a list, or alone without one. */
export function itemPath(reading: Reading, path: SourcePath, index: number): SourcePath {
  return reading.nodeAt(path)?.kind === 'list' ? [...path, index] : path;
}
