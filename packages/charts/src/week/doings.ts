import type { WatchedRow, WatchedSpan } from '@buildweek/results';
import { MACHINE_STATE_PARTS, PERSON_STATE_PARTS, type StackPart, WORK_FAMILIES } from '../palette.ts';

/** What a machine, station or person does, in as few kinds as can be told apart in a thin row. */
export type Doing =
  | 'runs'
  | 'heats or cools'
  | 'hands at work'
  | 'other duties'
  | 'waits for hands'
  | 'waits to fill'
  | 'upkeep'
  | 'down';

/** How a kind of doing is drawn: its colour, and a height that tells the same without colour. */
export interface DoingLook {
  readonly label: string;
  readonly colour: string;
  /** Share of the row. */
  readonly height: number;
}

function look({ colour }: StackPart, label: string, height: number): DoingLook {
  return { label, colour, height };
}

/** In the order of the key. */
export const DOINGS: Readonly<Record<Doing, DoingLook>> = {
  runs: look(WORK_FAMILIES.print, 'prints or runs', 0.66),
  'heats or cools': look(WORK_FAMILIES['warm-up and cool-down'], 'warms up, cools down', 0.42),
  'hands at work': look(WORK_FAMILIES['hand work'], 'hands at work', 0.9),
  'other duties': look(PERSON_STATE_PARTS['other duties'], 'other duties', 0.3),
  'waits for hands': look(MACHINE_STATE_PARTS['waiting to be unloaded'], 'waits for somebody', 0.24),
  'waits to fill': look(MACHINE_STATE_PARTS['waiting to fill'], 'waits to fill', 0.12),
  upkeep: look(MACHINE_STATE_PARTS.maintenance, 'maintenance, tests', 0.5),
  down: look(MACHINE_STATE_PARTS.down, 'broken down', 0.9),
};

const OF_STATE: Readonly<Record<string, Doing | null>> = {
  print: 'runs',
  run: 'runs',
  'warm-up': 'heats or cools',
  'cool-down': 'heats or cools',
  prepare: 'hands at work',
  'set-up': 'hands at work',
  load: 'hands at work',
  unload: 'hands at work',
  work: 'hands at work',
  overtime: 'hands at work',
  'other duties': 'other duties',
  'waiting to start': 'waits for hands',
  'waiting to be unloaded': 'waits for hands',
  'waiting to fill': 'waits to fill',
  maintenance: 'upkeep',
  'test print': 'upkeep',
  down: 'down',
  off: null,
  idle: null,
};

/** What is done in a span; null where nothing is: idle, free or off. */
export function doingOf({ state }: Pick<WatchedSpan, 'state'>): Doing | null {
  return OF_STATE[state] ?? null;
}

/** Spans in which a person is not there. */
export function offSpans(row: WatchedRow): readonly WatchedSpan[] {
  return row.kind === 'person' ? row.spans.filter(({ state }) => state === 'off') : [];
}
