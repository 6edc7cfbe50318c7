import { Phrase } from './phrase.ts';
import { toBase, type UnitKind } from './units.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** What a length, an area, a volume may be. */
interface Limits {
  /** Whether zero has a meaning; default: no. */
  readonly orZero?: boolean;
}

/** `3 mm`, `60 cm2`, `5200 mm3`: one measure with its unit, in mm, mm2 or mm3. @returns a reader */
export function measure(
  kind: 'length' | 'area' | 'volume',
  example: string,
  { orZero = false }: Limits = {},
): Wording<number> {
  const expected = `${NAMES[kind]} above zero, with its unit`;
  return (text) => {
    const phrase = new Phrase(text, orZero ? `${NAMES[kind]} with its unit` : expected, example);
    const value = measureOf(phrase, kind);
    phrase.end();
    if (value > 0 || orZero) return value;
    throw phrase.error('It cannot be zero.');
  };
}

/** `8 mm3 per s`, `30 cm3 per h`: how much in a second, in mm2 or mm3. @returns a reader */
export function rate(kind: 'area' | 'volume', example: string): Wording<number> {
  return (text) => {
    const phrase = new Phrase(text, `${NAMES[kind]} in a time, above zero`, example);
    const value = measureOf(phrase, kind);
    if (phrase.atEnd) throw phrase.error(`"${text}" does not say in which time.`, `${text} per s`);
    phrase.need('per');
    const seconds = PERIODS.get(phrase.next);
    if (seconds === undefined) {
      throw phrase.error(`"per ${phrase.next}" is not possible here.`, text.replace(/\bper\s.*$/i, 'per s'));
    }
    phrase.take(phrase.next);
    phrase.end();
    if (value > 0) return value / seconds;
    throw phrase.error('At this rate nothing would ever be finished.');
  };
}

/** `0.45 g per cm3`, `1.06 g/cm3`: a density in g/cm3. @throws WordingError */
export const density: Wording<number> = (text) => {
  const phrase = new Phrase(
    text.replace(/\s*\/\s*/, ' per '),
    'a mass in a volume, above zero',
    '0.45 g per cm3',
  );
  const mass = phrase.amount('mass');
  if (mass.unit === null) throw phrase.error(`"${mass.text}" has no unit.`, `${mass.text} g per cm3`);
  phrase.need('per');
  if (!phrase.take('cm3')) {
    throw phrase.error('Densities are in g per cm3.', text.replace(/\bper\b.*$/i, 'per cm3'));
  }
  phrase.end();
  const value = toBase(mass.number, mass.unit);
  if (value > 0) return value;
  throw phrase.error('It cannot be zero.');
};

const NAMES: Readonly<Record<'length' | 'area' | 'volume', string>> = {
  length: 'a length',
  area: 'an area',
  volume: 'a volume',
};

const USUAL: Readonly<Record<'length' | 'area' | 'volume', string>> = {
  length: 'mm',
  area: 'mm2',
  volume: 'mm3',
};

const PERIODS: ReadonlyMap<string, number> = new Map([
  ['s', 1],
  ['second', 1],
  ['min', 60],
  ['minute', 60],
  ['h', 3600],
  ['hour', 3600],
]);

function measureOf(phrase: Phrase, kind: Extract<UnitKind, 'length' | 'area' | 'volume'>): number {
  const amount = phrase.amount(kind);
  if (amount.unit !== null) return toBase(amount.number, amount.unit);
  throw new WordingError(
    `"${phrase.text}" has no unit.`,
    phrase.expected,
    phrase.text.replace(amount.text, `${amount.text} ${USUAL[kind]}`),
  );
}

/** `5.2 cm3`, or mm3 of what is small. @param volume mm3 */
export function volumeText(volume: number): string {
  return volume < 1000 ? `${rounded(volume)} mm3` : `${rounded(volume / 1000)} cm3`;
}

/** `60 cm2`, or mm2 of what is small. @param area mm2 */
export function areaText(area: number): string {
  return area < 100 ? `${rounded(area)} mm2` : `${rounded(area / 100)} cm2`;
}

function rounded(value: number): number {
  return Number(value.toPrecision(4));
}
