/** What a generic class of machines or stations has: what is low, typical and high in the trade. */
export interface TypicalValue {
  /** What it is, in the words of a scenario where it has some. */
  readonly name: string;
  readonly unit: string;
  readonly low: number;
  readonly typical: number;
  readonly high: number;
  /** Where it is from, for a reader. */
  readonly source: string;
}

/** What people of the trade would say, without a source that could be looked up. */
export const COMMON_PRACTICE = 'common practice, no source';

export function typicalValue(
  name: string,
  unit: string,
  [low, typical, high]: readonly [number, number, number],
  source = COMMON_PRACTICE,
): TypicalValue {
  return { name, unit, low, typical, high, source };
}

/** The typical value as a scenario words it, `0.05 mm`. */
export function typicalText({ typical, unit }: TypicalValue): string {
  return unit === '' ? String(typical) : `${typical} ${unit}`;
}

/** The values as a scenario words a time that varies, `5 to 20 min, usually 10`. */
export function rangeText({ low, typical, high, unit }: TypicalValue): string {
  return `${low} to ${high} ${unit}, usually ${typical}`;
}
