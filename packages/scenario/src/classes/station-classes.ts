import type { ClassTexts } from '../fields.ts';

/** Where the times of cure units are from. */
export const CURING =
  'at least 30 min for small sections: Materials 14 (2021) 4856; the rest is common practice, no source';

/**
 * Generic station classes, worded as in a scenario file. All of it is common practice, no source, but for the
 * half hour of curing as a lower bound.
 */
export const STATION_CLASSES: ReadonlyMap<string, ClassTexts> = new Map<string, ClassTexts>([
  [
    'wash bath',
    {
      holds: '1 build',
      takes: '6 to 20 min per batch, usually 12',
      load: '2 to 5 min, usually 3',
      unload: '2 to 5 min, usually 3',
      by: 'run machines',
    },
  ],
  [
    'support bath',
    {
      holds: '20 parts',
      takes: '2 to 12 h per batch, usually 6',
      load: '2 to 5 min, usually 3',
      unload: '3 to 10 min, usually 5',
      by: 'run machines',
    },
  ],
  [
    'cure unit',
    {
      holds: '20 parts',
      takes: '30 to 60 min per batch, usually 35',
      load: '2 to 5 min, usually 3',
      unload: '1 to 5 min, usually 2',
      by: 'run machines',
    },
  ],
  ['powder station', { holds: '1 build', takes: '20 to 45 min per build, usually 30', by: 'hand work' }],
  ['blasting cabinet', { holds: '30 parts', takes: '10 to 20 min per batch, usually 15', by: 'hand work' }],
  [
    'drying oven',
    {
      holds: '40 parts',
      takes: '1 to 4 h per batch, usually 2',
      load: '2 to 5 min, usually 3',
      unload: '2 to 5 min, usually 3',
      by: 'run machines',
    },
  ],
]);
