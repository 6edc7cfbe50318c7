import type { Process } from '@buildweek/model';
import type { ClassTexts } from '../fields.ts';

/** A generic class of machines: its process, and times worded as in a scenario file. */
export interface MachineClass {
  readonly process: Process;
  readonly texts: ClassTexts;
}

/**
 * Generic machine classes with low, high and usual values. All of it is common practice, no source: replace it
 * by what your own machines show.
 */
export const MACHINE_CLASSES: ReadonlyMap<string, MachineClass> = new Map<string, MachineClass>([
  [
    'small MEX',
    {
      process: 'MEX',
      texts: {
        'set-up': '5 to 20 min, usually 10',
        'material change': '5 to 15 min, usually 8',
        'warm-up': '3 to 18 min, usually 9',
        'cool-down': '6 to 60 min, usually 18',
        unload: '2 to 10 min, usually 5',
      },
    },
  ],
  [
    'heated MEX',
    {
      process: 'MEX',
      texts: {
        'set-up': '10 to 40 min, usually 20',
        'material change': '10 to 30 min, usually 15',
        'warm-up': '0.5 to 3 h, usually 1',
        'cool-down': '0.5 to 4 h, usually 1.5',
        unload: '5 to 15 min, usually 10',
      },
    },
  ],
  [
    'small mask VPP',
    {
      process: 'VPP',
      texts: {
        'set-up': '5 to 20 min, usually 10',
        // Each material has a tank of its own that stands ready.
        'material change': '20 to 90 s, usually 40',
        'warm-up': '0 to 18 min, usually 6',
        unload: '3 to 10 min, usually 6',
      },
    },
  ],
  [
    'large laser VPP',
    {
      process: 'VPP',
      texts: {
        'set-up': '15 to 45 min, usually 25',
        'material change': '20 to 60 min, usually 40',
        'warm-up': '6 to 30 min, usually 18',
        'cool-down': '10 to 20 min, usually 15',
        unload: '10 to 30 min, usually 15',
      },
    },
  ],
  [
    'compact PBF',
    {
      process: 'PBF',
      texts: {
        prepare: '10 to 60 min, usually 20',
        'set-up': '20 to 60 min, usually 30',
        'material change': '2 to 4 h, usually 2.5',
        'warm-up': '0.7 to 2.5 h, usually 1.5',
        'cool-down': '4 to 20 h, usually 10',
        unload: '10 to 30 min, usually 15',
      },
    },
  ],
  [
    'large PBF',
    {
      process: 'PBF',
      texts: {
        prepare: '15 to 90 min, usually 30',
        'set-up': '30 to 120 min, usually 60',
        'material change': '3 to 8 h, usually 4',
        'warm-up': '1 to 4 h, usually 2',
        'cool-down': '10 to 50 h, usually 20',
        unload: '15 to 60 min, usually 30',
      },
    },
  ],
]);
