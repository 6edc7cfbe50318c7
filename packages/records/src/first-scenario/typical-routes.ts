import type { ProcessClass } from '../facts/process-class.ts';

/** A stage of a route that a log does not tell. */
interface TypicalStage {
  readonly name: string;
  /** Key and value of what it is, besides its time. */
  readonly is: string;
  /** Null for a build and for a station of a class, whose times are elsewhere. */
  readonly takes: string | null;
}

/** How machines of a class are used where nobody says otherwise. */
export interface TypicalUse {
  readonly start: string;
  /** What a build takes where no machine's record tells: a guess. */
  readonly print: string;
  readonly stages: readonly TypicalStage[];
  /** Stations by name, with their class. */
  readonly stations: ReadonlyMap<string, string>;
}

const BY_HAND = 'by: hand work, may pause: yes';
const prepare = (takes: string): TypicalStage => ({ name: 'prepare file', is: 'by: prepare files', takes });
const byHand = (name: string, takes: string): TypicalStage => ({ name, is: BY_HAND, takes });
const on = (name: string, station: string): TypicalStage => ({ name, is: `on: ${station}`, takes: null });
const BUILD: TypicalStage = { name: 'build', is: '', takes: null };
const VAT_STATIONS = new Map([
  ['washer', 'wash bath'],
  ['cure', 'cure unit'],
]);

/** Common practice, no source: the same times as the classes of machines have for routes. */
export const TYPICAL_USE: Readonly<Record<ProcessClass, TypicalUse>> = {
  'small MEX': {
    start: 'at once',
    print: '1 to 12 h per build, usually 4',
    stages: [
      prepare('5 to 30 min per job, usually 10'),
      BUILD,
      byHand('remove supports', '1 to 20 min per part, usually 5'),
      byHand('inspect', '0.5 to 10 min per part, usually 3'),
    ],
    stations: new Map(),
  },
  'heated MEX': {
    start: 'when full or after 6 h or before closing',
    print: '2 to 20 h per build, usually 6',
    stages: [
      prepare('10 to 40 min per job, usually 15'),
      BUILD,
      byHand('remove supports', '2 to 30 min per part, usually 8'),
      byHand('inspect', '1 to 15 min per part, usually 4'),
    ],
    stations: new Map(),
  },
  'small mask VPP': {
    start: 'when 60 % full or after 4 h or before closing',
    print: '1 to 6 h per build, usually 2',
    stages: [
      prepare('10 to 45 min per job, usually 20'),
      BUILD,
      on('wash', 'washer'),
      { name: 'dry', is: 'wait: 20 min', takes: null },
      on('cure', 'cure'),
      byHand('remove supports', '2 to 15 min per part, usually 5'),
      byHand('inspect', '0.5 to 10 min per part, usually 3'),
    ],
    stations: VAT_STATIONS,
  },
  'large laser VPP': {
    start: 'when 60 % full or after 4 h or before closing',
    print: '4 to 30 h per build, usually 10',
    stages: [
      prepare('10 to 60 min per job, usually 25'),
      BUILD,
      on('wash', 'washer'),
      { name: 'dry', is: 'wait: 30 min', takes: null },
      on('cure', 'cure'),
      byHand('remove supports', '3 to 30 min per part, usually 8'),
      byHand('inspect', '1 to 15 min per part, usually 4'),
    ],
    stations: VAT_STATIONS,
  },
  'compact PBF': {
    start: 'when 60 % full or after 24 h',
    print: '6 to 24 h per build, usually 12',
    stages: [
      BUILD,
      on('unpack', 'powder bench'),
      byHand('remove powder', '0.5 to 2 min per part, usually 1'),
      on('blast', 'blaster'),
      byHand('inspect', '0.5 to 10 min per part, usually 2'),
    ],
    stations: new Map([
      ['powder bench', 'powder station'],
      ['blaster', 'blasting cabinet'],
    ]),
  },
};
