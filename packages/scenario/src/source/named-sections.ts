import { entryOf, type SourceNode } from './source-node.ts';

/** Sections whose first level are names that people give. */
export const NAMED_SECTIONS = [
  'people',
  'machines',
  'stations',
  'carriers',
  'routes',
  'parts',
  'demand',
  'hours',
];

/** Sections in which something has this name. */
export function sectionsWith(root: SourceNode, name: string): string[] {
  return NAMED_SECTIONS.filter((section) => entryOf(entryOf(root, section)?.node, name));
}
