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
  if (isSectionLost(reading, kind)) return false;
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

/** Sections of the file in which names of a kind are described. */
const SECTIONS: Readonly<Record<string, readonly string[]>> = {
  carrier: ['carriers'],
  demand: ['demand'],
  hours: ['hours'],
  machine: ['machines'],
  'machine or station': ['machines', 'stations'],
  part: ['parts'],
  route: ['routes'],
};

/** Whether names are missing because their whole section is wrong or misspelt, which has been reported. */
export function isSectionLost(reading: Reading, kind: string): boolean {
  return (SECTIONS[kind] ?? []).some(
    (section) =>
      reading.isBroken([section]) || (reading.isMisspelt([]) && reading.nodeAt([section]) === undefined),
  );
}

/** @returns where a skill of a group of people is in the file */
export function skillPath(reading: Reading, group: string, skill: string): SourcePath {
  const list = reading.nodeAt(['people', group, 'skills']);
  const index =
    list?.kind === 'list'
      ? list.items.findIndex((item) => item.kind === 'scalar' && item.text === skill)
      : -1;
  return ['people', group, 'skills', ...(index < 0 ? [] : [index])];
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
