import type { Variation } from '@buildweek/model';

/** What is chosen, as answers name it: the group, or the place of the value without its section. */
export function variationName(variation: Variation): string {
  if (variation.kind === 'count') return variation.group;
  const { path } = variation;
  return (path.length > 2 ? path.slice(1) : path).join(' / ');
}

/** Where the chosen value stands in the scenario, from the top of the file. */
export function variationPlace(variation: Variation): string {
  if (variation.kind === 'wording') return variation.path.join(' / ');
  const { of, group } = variation;
  return of === 'carriers' ? `${of} / ${group}` : `${of} / ${group} / count`;
}
