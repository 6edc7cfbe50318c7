import type { MachineState, PersonState, StationState, WaitCause } from '@buildweek/results';

/**
 * The colours of every chart and of the page, in one place.
 *
 * Blues mean that something happens to the parts, warm colours that parts or machines are held up, violet and khaki that
 * a machine is looked after, greys that nothing is asked for. Every two parts of one stack can be told apart by readers
 * who lack one kind of cone, and neighbours on a print without colour; the code letters say the rest.
 */
export const INK = '#1b242d';
export const MUTED_INK = '#54606b';
export const PAPER = '#ffffff';
export const GRID = '#dedbd3';
export const CLOSED_HOURS = '#f0eee8';
export const LINE = '#16425b';
export const BAND = '#9dc0d6';
/** A wide band around a narrower one in `BAND`. */
export const OUTER_BAND = '#d6e5ef';
export const SECOND_LINE = '#b3531b';
export const SECOND_BAND = '#ecc7a8';

/**
 * From nothing to the most, for maps: each darker than the one before, so that a print without colour says the same.
 */
export const HEAT: readonly string[] = ['#f7f4ec', '#f4d58d', '#e39a4f', '#bd5a34', '#7f2d33', '#3a1226'];

/** Print process (ISO/ASTM 52900), or what is no print process of its own. */
export type ProcessName = 'MEX' | 'VPP' | 'PBF' | 'other';

export const PROCESS_COLOURS: Readonly<Record<ProcessName, string>> = {
  MEX: '#16425b',
  VPP: '#b3531b',
  PBF: '#e0ad2c',
  other: '#868e95',
};

/** A part of a stacked bar: its code letter, the words for it, and its colour. */
export interface StackPart {
  readonly code: string;
  readonly label: string;
  /** For a label inside the bar. */
  readonly short: string;
  readonly colour: string;
}

/** Kinds of work into which the steps of a route are gathered. */
export type WorkFamily =
  | 'print'
  | 'warm-up and cool-down'
  | 'hand work'
  | 'stations and plain waits'
  | 'made outside';

export const WORK_FAMILIES: Readonly<Record<WorkFamily, StackPart>> = {
  print: { code: 'A', label: 'print', short: 'print', colour: '#16425b' },
  'warm-up and cool-down': { code: 'B', label: 'warm-up, cool-down', short: 'heat, cool', colour: '#5d8fb0' },
  'hand work': { code: 'C', label: 'hand work', short: 'hands', colour: '#a3c6da' },
  'stations and plain waits': { code: 'D', label: 'stations, drying', short: 'stations', colour: '#d3e5ef' },
  'made outside': { code: 'M', label: 'made outside', short: 'outside', colour: '#3f6b5c' },
};

/** The lead time in three: printing, all other work, waiting. */
export const PRINT_SHARE_PARTS: Readonly<Record<'print' | 'work' | 'wait', StackPart>> = {
  print: { code: 'A', label: 'print', short: 'print', colour: '#16425b' },
  work: { code: 'B', label: 'all other work', short: 'work', colour: '#a3c6da' },
  wait: { code: 'C', label: 'waiting', short: 'waits', colour: '#d9722e' },
};

export const WAIT_CAUSE_PARTS: Readonly<Record<WaitCause, StackPart>> = {
  person: { code: 'E', label: 'wait for a person', short: 'person', colour: '#d9722e' },
  shift: { code: 'F', label: 'wait for the shift', short: 'shift', colour: '#f5bd62' },
  machine: { code: 'G', label: 'wait for a machine', short: 'machine', colour: '#8c3b1f' },
  batch: { code: 'H', label: 'wait to fill a batch', short: 'batch', colour: '#f9dfa4' },
  carrier: { code: 'I', label: 'wait for a carrier', short: 'carrier', colour: '#b3824b' },
  'rest of the job': { code: 'J', label: 'wait for the rest of the job', short: 'rest', colour: '#d5c8af' },
  requester: { code: 'K', label: 'wait for the requester', short: 'requester', colour: '#6a3d8f' },
  'machine down': { code: 'L', label: 'wait for a repair', short: 'repair', colour: '#2b1418' },
};

export const MACHINE_STATE_PARTS: Readonly<Record<MachineState, StackPart>> = {
  print: { code: 'A', label: 'print', short: 'print', colour: '#16425b' },
  'warm-up': { code: 'B', label: 'warm-up', short: 'warm-up', colour: '#3f7499' },
  'cool-down': { code: 'C', label: 'cool-down', short: 'cool-down', colour: '#6d9cba' },
  prepare: { code: 'D', label: 'file preparation', short: 'files', colour: '#8fb4cb' },
  'set-up': { code: 'E', label: 'set-up', short: 'set-up', colour: '#b1cfdf' },
  unload: { code: 'F', label: 'unload', short: 'unload', colour: '#d3e5ef' },
  'waiting to start': { code: 'G', label: 'waiting to start', short: 'to start', colour: '#f5bd62' },
  'waiting to be unloaded': {
    code: 'H',
    label: 'waiting to be unloaded',
    short: 'to unload',
    colour: '#d9722e',
  },
  maintenance: { code: 'I', label: 'planned maintenance', short: 'upkeep', colour: '#744aa8' },
  'test print': { code: 'J', label: 'test prints', short: 'tests', colour: '#c7b98f' },
  down: { code: 'K', label: 'down', short: 'down', colour: '#2b1418' },
  off: { code: 'L', label: 'off', short: 'off', colour: '#aaa69c' },
  'waiting to fill': { code: 'M', label: 'waiting to fill', short: 'to fill', colour: '#f0d28f' },
  idle: { code: 'N', label: 'idle', short: 'idle', colour: '#eceae4' },
};

export const STATION_STATE_PARTS: Readonly<Record<StationState, StackPart>> = {
  run: { code: 'A', label: 'run', short: 'run', colour: '#16425b' },
  load: { code: 'B', label: 'load', short: 'load', colour: '#6d9cba' },
  unload: { code: 'C', label: 'unload', short: 'unload', colour: '#d3e5ef' },
  'waiting to start': { code: 'D', label: 'waiting to start', short: 'to start', colour: '#f5bd62' },
  'waiting to be unloaded': {
    code: 'E',
    label: 'waiting to be unloaded',
    short: 'to unload',
    colour: '#d9722e',
  },
  maintenance: { code: 'F', label: 'planned maintenance', short: 'upkeep', colour: '#744aa8' },
  'test print': { code: 'G', label: 'test runs', short: 'tests', colour: '#c7b98f' },
  down: { code: 'H', label: 'down', short: 'down', colour: '#2b1418' },
  off: { code: 'I', label: 'off', short: 'off', colour: '#aaa69c' },
  'waiting to fill': { code: 'J', label: 'waiting to fill', short: 'to fill', colour: '#f0d28f' },
  idle: { code: 'K', label: 'idle', short: 'idle', colour: '#eceae4' },
};

export const PERSON_STATE_PARTS: Readonly<Record<PersonState, StackPart>> = {
  work: { code: 'A', label: 'work on jobs', short: 'jobs', colour: '#16425b' },
  'other duties': { code: 'B', label: 'other duties', short: 'other', colour: '#8fb4cb' },
  idle: { code: 'C', label: 'free', short: 'free', colour: '#eceae4' },
  overtime: { code: 'D', label: 'overtime', short: 'overtime', colour: '#d9722e' },
  off: { code: 'E', label: 'off duty', short: 'off duty', colour: '#aaa69c' },
};

/**
 * Relative luminance of a colour, 0 (black) to 1 (white): what is left of it on a print without colour.
 * Source: W3C, Web Content Accessibility Guidelines 2.2, definition of relative luminance.
 *
 * @param colour `#rrggbb`
 */
export function luminanceOf(colour: string): number {
  const channel = (from: number): number => {
    const share = Number.parseInt(colour.slice(from, from + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

/** Text colour that reads better on a ground: paper on dark, ink on light. */
export function textColourOn(ground: string): string {
  const ratio = (one: string): number => {
    const [low, high] = [luminanceOf(one), luminanceOf(ground)].sort((a, b) => a - b) as [number, number];
    return (high + 0.05) / (low + 0.05);
  };
  return ratio(PAPER) > ratio(INK) ? PAPER : INK;
}
