import type { Amount } from './phrase.ts';
import { Phrase } from './phrase.ts';
import { toBase } from './units.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** A box as it stands, mm: along x, y and z. */
export interface Size {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
}

const EXPECTED = 'width x depth x height, with the unit';
const EXAMPLE = '42 x 42 x 11 mm';

/** `42 x 42 x 11 mm`: width, depth and height. One unit at the end holds for the numbers before. @throws WordingError */
export const size: Wording<Size> = (text) => {
  const spaced = text.replace(/(\d)\s*[x×*]\s*(?=[.\d])/gi, '$1 x ').trim();
  if (/\d[x×*]|[x×*]\d|\*/i.test(text)) {
    throw new WordingError(`The sides in "${text}" run together.`, `${EXPECTED}; "x" between spaces`, spaced);
  }
  const phrase = new Phrase(text, EXPECTED, EXAMPLE);
  const amounts = [phrase.amount('length')];
  while (phrase.take('x', '×')) amounts.push(phrase.amount('length'));
  phrase.end();
  const unit = amounts.findLast((amount) => amount.unit !== null)?.unit ?? null;
  if (amounts.length !== 3) {
    throw phrase.error(`A size has three sides, and here ${sidesText(amounts.length)}.`);
  }
  if (unit === null) throw phrase.error(`"${text}" has no unit.`, `${text} mm`);
  const [width = 0, depth = 0, height = 0] = amounts.map(({ number }, index) => {
    if (number === 0) throw phrase.error(`A box whose ${SIDES[index]} is zero holds nothing.`);
    return toBase(number, unitOf(amounts, index) ?? unit);
  });
  return { width, depth, height };
};

/** `42 x 42 x 11 mm`, as a file would say it. */
export function sizeText({ width, depth, height }: Size): string {
  return `${[width, depth, height].map((side) => Number(side.toFixed(2))).join(' x ')} mm`;
}

const SIDES = ['width', 'depth', 'height'] as const;

function unitOf(amounts: readonly Amount[], from: number): Amount['unit'] {
  return amounts.slice(from).find((amount) => amount.unit !== null)?.unit ?? null;
}

function sidesText(count: number): string {
  return count === 1 ? 'is one' : `are ${count}`;
}
