import type { Process } from '@buildweek/model';
import { MACHINE_CLASSES } from './machine-classes.ts';
import { MACHINE_RANGES } from './machine-ranges.ts';
import { MACHINE_SHAPES } from './machine-shapes.ts';
import { CURING, STATION_CLASSES } from './station-classes.ts';
import { STATION_VOLUMES } from './station-volumes.ts';
import { COMMON_PRACTICE, type TypicalValue, typicalValue } from './typical-value.ts';

/**
 * What a value of a class is for: it stands in for a key that a scenario does not write; it is a start for times
 * that routes say; it is for planning money, which no scenario does yet.
 */
export type TypicalUse = 'stands in' | 'for routes' | 'for planning money later';

export interface TypicalParameter extends TypicalValue {
  readonly use: TypicalUse;
}

/** A generic class that a scenario can name, with what is low, typical and high in the trade. */
export interface TypicalClass {
  readonly name: string;
  readonly kind: 'machines' | 'stations';
  /** Null for stations. */
  readonly process: Process | null;
  readonly parameters: readonly TypicalParameter[];
}

/** All generic classes of machines and stations, in the order in which a lab comes to them. */
export function typicalMachines(): TypicalClass[] {
  return [
    ...[...MACHINE_CLASSES].map(([name, { process, texts }]): TypicalClass => {
      const shapes = MACHINE_SHAPES.get(name)?.values ?? [];
      const ranges = MACHINE_RANGES.get(name);
      return {
        name,
        kind: 'machines',
        process,
        parameters: [
          ...used(
            'stands in',
            timesOf(
              texts,
              shapes.some((value) => value.name === 'cool-down'),
            ),
          ),
          ...used('stands in', shapes),
          ...used('stands in', ranges?.troubles ?? []),
          ...used('for routes', ranges?.work ?? []),
          ...used('for planning money later', ranges?.money ?? []),
        ],
      };
    }),
    ...[...STATION_CLASSES].map(([name, texts]): TypicalClass => {
      const volume = STATION_VOLUMES.get(name);
      return {
        name,
        kind: 'stations',
        process: null,
        parameters: used('stands in', [
          ...timesOf(texts, false, name === 'cure unit' ? CURING : COMMON_PRACTICE),
          ...(volume === undefined ? [] : [volume]),
        ]),
      };
    }),
  ];
}

function used(use: TypicalUse, values: readonly TypicalValue[]): TypicalParameter[] {
  return values.map((value) => ({ ...value, use }));
}

const RANGE = /^([\d.]+) to ([\d.]+) (\S+)( per \w+)?, usually ([\d.]+)$/;

/**
 * Times of a class as numbers.
 *
 * @param growsWithHeight whether the cool-down among them is that of builds whose height nobody knows
 */
function timesOf(
  texts: Readonly<Record<string, string>>,
  growsWithHeight: boolean,
  source = COMMON_PRACTICE,
): TypicalValue[] {
  return Object.entries(texts).flatMap(([key, text]) => {
    const parts = RANGE.exec(text);
    if (parts === null) return [];
    const [, low, high, unit = '', basis = '', typical] = parts;
    const name = growsWithHeight && key === 'cool-down' ? 'cool-down of builds of unknown height' : key;
    return [typicalValue(name, `${unit}${basis}`, [Number(low), Number(typical), Number(high)], source)];
  });
}
