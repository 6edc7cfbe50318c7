import { nearest } from '../nearest.ts';

export type UnitKind = 'time' | 'length' | 'area' | 'volume' | 'mass' | 'share';

export interface Unit {
  readonly kind: UnitKind;
  /** So many base units (hours, millimetres, square and cubic millimetres, grams, parts of one) … */
  readonly times: number;
  /** … are so many of this unit. One of the two is 1, so that nothing is rounded twice. */
  readonly over: number;
}

const MONTH_HOURS = (365.25 / 12) * 24;

const UNITS = new Map<string, Unit>([
  ...named('time', 1, 3600, 's', 'second', 'seconds'),
  ...named('time', 1, 60, 'min', 'minute', 'minutes'),
  ...named('time', 1, 1, 'h', 'hour', 'hours'),
  ...named('time', 24, 1, 'day', 'days'),
  ...named('time', 168, 1, 'week', 'weeks'),
  ...named('time', MONTH_HOURS, 1, 'month', 'months'),
  ...named('time', 12 * MONTH_HOURS, 1, 'year', 'years'),
  ...named('length', 1, 1, 'mm'),
  ...named('length', 10, 1, 'cm'),
  ...named('area', 1, 1, 'mm2'),
  ...named('area', 100, 1, 'cm2'),
  ...named('volume', 1, 1, 'mm3'),
  ...named('volume', 1000, 1, 'cm3'),
  ...named('volume', 1e6, 1, 'litre', 'litres', 'l'),
  ...named('mass', 1, 1, 'g'),
  ...named('share', 1, 100, '%', 'percent'),
]);

/** @returns a number of a unit in base units */
export function toBase(number: number, unit: Unit): number {
  return (number * unit.times) / unit.over;
}

/** How units of a kind are named in messages. */
export const UNIT_WORDS: Readonly<Record<UnitKind, string>> = {
  time: 's, min, h, days, weeks or months',
  length: 'mm or cm',
  area: 'mm2 or cm2',
  volume: 'mm3, cm3 or litres',
  mass: 'g',
  share: '%',
};

/** @returns the unit with this name, or undefined; upper and lower case count */
export function unitNamed(name: string): Unit | undefined {
  return UNITS.get(name);
}

/** @returns the unit that was probably meant by a name that is none */
export function nearestUnit(name: string): string | null {
  const known: Readonly<Record<string, string>> = {
    m: 'min',
    mins: 'min',
    sec: 's',
    secs: 's',
    hr: 'h',
    hrs: 'h',
    d: 'days',
    w: 'weeks',
    wk: 'weeks',
    liter: 'litre',
    liters: 'litres',
    ml: 'cm3',
    ccm: 'cm3',
    cc: 'cm3',
    qmm: 'mm2',
    qcm: 'cm2',
    'mm²': 'mm2',
    'cm²': 'cm2',
    'mm³': 'mm3',
    'cm³': 'cm3',
  };
  const lower = name.toLowerCase();
  if (UNITS.has(lower)) return lower;
  return known[lower] ?? (lower.length < 3 ? null : nearest(lower, [...UNITS.keys()]));
}

function named(kind: UnitKind, times: number, over: number, ...names: readonly string[]): [string, Unit][] {
  return names.map((name) => [name, { kind, times, over }]);
}
