import { listed, nearest } from '../nearest.ts';
import type { Reading } from '../reading.ts';
import type { SourcePath } from '../source/source-node.ts';

/**
 * Looks a name up; when it is not there, reports it and proposes the nearest.
 *
 * @param path where the name is written
 * @param kind what it should name, as `material` or `machine or station`
 * @param candidates what there is
 * @returns whether it is there
 */
export function resolves(
  reading: Reading,
  path: SourcePath,
  name: string,
  kind: string,
  candidates: readonly string[],
  part: 'key' | 'value' = 'value',
): boolean {
  if (candidates.includes(name)) return true;
  // An empty name stands for one that was missing, which has been reported.
  if (name === '') return false;
  // The whole section may stand under a key that is misspelt; one message is enough.
  if (candidates.length === 0 && reading.isMisspelt([])) return false;
  const meant = nearest(name, candidates);
  reading.report(path, part, {
    message: `There ${kind === 'hours' ? 'are' : 'is'} no ${kind} called "${name}".`,
    found: name,
    expected:
      candidates.length === 0 ? `the name of a ${kind} that this file describes` : listed(candidates, 12),
    write: meant ?? (candidates.length === 1 ? (candidates[0] ?? '') : 'one of these names, or describe it'),
  });
  return false;
}

/** @returns where a stage of a route is in the file */
export function stagePath(reading: Reading, route: string, stage: string): SourcePath {
  const list = reading.nodeAt(['routes', route]);
  const index =
    list?.kind === 'list'
      ? list.items.findIndex(
          (item) => item.kind === 'map' && item.entries.some((entry) => entry.key === stage),
        )
      : -1;
  return index < 0 ? ['routes', route] : ['routes', route, index, stage];
}
